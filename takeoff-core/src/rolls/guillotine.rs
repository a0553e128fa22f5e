//! The most value that guillotine cuts get out of a rectangle, when every piece may be cut as often as one likes.
use super::kinds::{Kind, Way};
use super::layout::Layout;
use super::sums::{Grid, Rounding};

/// Cuts weighed for one set of prices at most: steps along × half of the pairs of steps across.
const MOST_CUTS: usize = 1_000_000;

/// A rectangle of sheet and what may be cut from it, ready to be asked for one set of prices after another.
///
/// # Method
///
/// A cut only makes sense where pieces laid end to end can end, so the sides are walked in such *normal* steps
/// (Herz 1972; Christofides and Whitlock 1977). With `F(x, y)` the best value of an `x × y` rectangle,
///
/// ```text
/// F(x, y) = max( a piece that fits,  F(x', y) + F(x − x', y),  F(x, y') + F(x, y − y') )
/// ```
///
/// with `x' ≤ x/2` and `y' ≤ y/2` (Gilmore and Gomory 1966; Beasley 1985). All in whole numbers, so `F` is exact for
/// the steps it walks.
///
/// # Example
///
/// A 10 × 20 sheet; 10 × 10 is worth 10, 10 × 11 is worth 19. Two of the first make 20.
#[derive(Debug)]
pub(super) struct Board {
    ways: Vec<(usize, Way)>,
    /// Where each way ends, as steps along and across.
    ends: Vec<(usize, usize)>,
    along: Grid,
    across: Grid,
}

/// The best values of all rectangles of a board at one set of prices.
pub(super) struct Values<'b> {
    board: &'b Board,
    prices: Vec<i64>,
    /// Row by row: all steps across for each step along.
    best: Vec<i64>,
}

impl Board {
    /// A board so long and so wide. Where pieces can end in too many places, more than `most_along` of them along the
    /// roll, sizes are rounded as told: up, so that what is cut can be cut; down, so that no value is missed.
    pub(super) fn new(
        kinds: &[Kind],
        length: i64,
        width: i64,
        most_along: usize,
        rounding: Rounding,
    ) -> Board {
        let ways = kinds.iter().enumerate();
        let mut ways: Vec<(usize, Way)> =
            ways.flat_map(|(kind, of)| of.ways.iter().map(move |&way| (kind, way))).collect();
        ways.sort_unstable();
        let along = Grid::of(ways.iter().map(|(_, way)| way.length), length, most_along, rounding);
        let most_across = (4 * MOST_CUTS / along.steps()).isqrt();
        let across = Grid::of(ways.iter().map(|(_, way)| way.width), width, most_across, rounding);
        let end = |&(_, way): &(usize, Way)| (along.end(way.length), across.end(way.width));
        let (ways, ends) = ways
            .iter()
            .filter_map(|way| if let (Some(i), Some(j)) = end(way) { Some((*way, (i, j))) } else { None })
            .unzip();
        Board { ways, ends, along, across }
    }

    /// The ways to cut a piece, by kind.
    pub(super) fn ways(&self) -> &[(usize, Way)] {
        &self.ways
    }

    /// Whether this way takes more of the board's width than it is wide.
    pub(super) fn overstates(&self, way: &Way) -> bool {
        self.across.end(way.width).is_none_or(|end| self.across.ends()[end] > way.width)
    }

    /// The best values at these prices, one a way.
    pub(super) fn values(&self, prices: Vec<i64>) -> Values<'_> {
        let (rows, columns) = (self.along.steps(), self.across.steps());
        let mut best = vec![0; rows * columns];
        for (&(i, j), &price) in self.ends.iter().zip(&prices) {
            best[i * columns + j] = best[i * columns + j].max(price);
        }
        for i in 0..rows {
            if i > 0 {
                let (before, row) = best.split_at_mut(i * columns);
                let row = &mut row[..columns];
                raise(row, &before[(i - 1) * columns..]);
                for first in 1..=self.along.half(i) {
                    let then = self.along.rest(i, first);
                    let (a, b) = (&before[first * columns..], &before[then * columns..]);
                    for ((value, a), b) in row.iter_mut().zip(a).zip(b) {
                        *value = (*value).max(a + b);
                    }
                }
            }
            let row = &mut best[i * columns..(i + 1) * columns];
            for j in 1..columns {
                let mut value = row[j].max(row[j - 1]);
                for lower in 1..=self.across.half(j) {
                    value = value.max(row[lower] + row[self.across.rest(j, lower)]);
                }
                row[j] = value;
            }
        }
        Values { board: self, prices, best }
    }
}

/// Raises each value to the one beside it in the other list.
fn raise(values: &mut [i64], others: &[i64]) {
    values.iter_mut().zip(others).for_each(|(value, &other)| *value = (*value).max(other));
}

impl Values<'_> {
    /// The best value of the whole board.
    pub(super) fn top(&self) -> i64 {
        self.best.last().copied().unwrap_or(0)
    }

    /// The best value of each length of the full width, with that length, shortest first.
    pub(super) fn by_length(&self) -> impl Iterator<Item = (i64, i64)> + '_ {
        let across = self.board.across.steps();
        self.board
            .along
            .ends()
            .iter()
            .zip(self.best.chunks(across))
            .skip(1)
            .map(|(&length, row)| (length, row.last().copied().unwrap_or(0)))
    }

    /// What is cut to get the best value of the first so many steps along, over the full width.
    pub(super) fn layout(&self, step: usize) -> Option<Layout> {
        self.at(step, self.board.across.steps() - 1)
    }

    /// The best section with a piece cut in this way and no longer than it: its value and its length.
    pub(super) fn with(&self, way: usize) -> (i64, i64) {
        let (value, i, _) = self.topped(way);
        (value, self.board.along.ends()[i])
    }

    /// The value of that, its step along and the steps across above the piece.
    fn topped(&self, way: usize) -> (i64, usize, usize) {
        let (i, j) = self.board.ends[way];
        let above = self.board.across.rest(self.board.across.steps() - 1, j);
        (self.prices[way] + self.value(i, above), i, above)
    }

    /// The layout of that.
    pub(super) fn layout_with(&self, way: usize) -> Layout {
        let (_, i, above) = self.topped(way);
        let (kind, cut) = self.board.ways[way];
        let piece = Layout::Piece { kind, way: cut };
        match self.at(i, above) {
            Some(upper) => Layout::over(piece, upper),
            None => piece,
        }
    }

    fn value(&self, i: usize, j: usize) -> i64 {
        self.best[i * self.board.across.steps() + j]
    }

    fn at(&self, i: usize, j: usize) -> Option<Layout> {
        let value = self.value(i, j);
        if value == 0 {
            return None;
        }
        let Board { ways, ends, along, across } = self.board;
        let fits = |&way: &usize| ends[way].0 <= i && ends[way].1 <= j && self.prices[way] == value;
        if let Some(way) = (0..ways.len()).find(fits) {
            let (kind, way) = ways[way];
            return Some(Layout::Piece { kind, way });
        }
        if i > 0 && self.value(i - 1, j) == value {
            return self.at(i - 1, j);
        }
        if j > 0 && self.value(i, j - 1) == value {
            return self.at(i, j - 1);
        }
        let lower =
            (1..=across.half(j)).find(|&k| self.value(i, k) + self.value(i, across.rest(j, k)) == value);
        if let Some(k) = lower {
            return joined(self.at(i, k), self.at(i, across.rest(j, k)), Layout::over);
        }
        let first =
            (1..=along.half(i)).find(|&k| self.value(k, j) + self.value(along.rest(i, k), j) == value)?;
        joined(self.at(first, j), self.at(along.rest(i, first), j), Layout::beside)
    }
}

fn joined(a: Option<Layout>, b: Option<Layout>, join: impl Fn(Layout, Layout) -> Layout) -> Option<Layout> {
    match (a, b) {
        (Some(a), Some(b)) => Some(join(a, b)),
        (a, b) => a.or(b),
    }
}
