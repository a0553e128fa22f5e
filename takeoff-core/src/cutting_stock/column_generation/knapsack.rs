//! The unbounded guillotine knapsack: the greatest value that can be cut from a rectangle if every piece may be cut any
//! number of times.
use super::cut_positions::{CutPositions, Rounding};
use crate::cutting_stock::item_types::{ItemType, Orientation, all_orientations};
use crate::cutting_stock::pattern::Pattern;

/// Limit on positions along × half of the pairs of positions across: the cuts that one solution compares.
const MAX_CUTS: usize = 1_000_000;

/// A rectangle and the orientations that can be cut from it, ready to be solved for one set of prices after another.
///
/// # Method
///
/// With `F(x, y)` the greatest value of an `x × y` rectangle,
///
/// ```text
/// F(x, y) = max( a piece that fits,  F(x', y) + F(x − x', y),  F(x, y') + F(x, y − y') )
/// ```
///
/// over cut positions `x' ≤ x/2` and `y' ≤ y/2` (Gilmore and Gomory 1966; Beasley 1985). Values are integers, so `F` is
/// exact on these positions.
///
/// # Example
///
/// A rectangle of 10 × 20; a piece of 10 × 10 has value 10, one of 10 × 11 value 19. Two of the first have value 20.
#[derive(Debug)]
pub(in crate::cutting_stock) struct Knapsack {
    /// Item type and orientation, in ascending order.
    orientations: Vec<(usize, Orientation)>,
    /// Position indices, along and across, at which each orientation ends.
    ends: Vec<(usize, usize)>,
    along: CutPositions,
    across: CutPositions,
}

/// The greatest values of all rectangles up to the knapsack's own, at one set of prices.
pub(in crate::cutting_stock) struct Solution<'k> {
    knapsack: &'k Knapsack,
    prices: Vec<i64>,
    /// One row per position along, with one value per position across. Values never fall along a row or a column.
    values: Vec<i64>,
}

impl Knapsack {
    /// A rectangle of this length and width.
    ///
    /// Where there are too many sums of sizes, along the roll more than `max_along`, sizes are rounded: up for
    /// patterns that can be cut, down for values that are upper bounds.
    pub(in crate::cutting_stock) fn new(
        items: &[ItemType],
        length: i64,
        width: i64,
        max_along: usize,
        rounding: Rounding,
    ) -> Knapsack {
        let mut orientations: Vec<(usize, Orientation)> = all_orientations(items).collect();
        orientations.sort_unstable();
        let lengths = orientations.iter().map(|(_, orientation)| orientation.length);
        let along = CutPositions::new(lengths, length, max_along, rounding);
        // Half of the pairs among half of the positions: n²/4 cuts across.
        let max_across = (4 * MAX_CUTS / along.count()).isqrt();
        let widths = orientations.iter().map(|(_, orientation)| orientation.width);
        let across = CutPositions::new(widths, width, max_across, rounding);
        let end_of = |orientation: &Orientation| {
            Some((along.end_of(orientation.length)?, across.end_of(orientation.width)?))
        };
        let (orientations, ends) =
            orientations.into_iter().filter_map(|of| Some((of, end_of(&of.1)?))).unzip();
        Knapsack { orientations, ends, along, across }
    }

    /// The orientations that fit, each with its item type, in ascending order.
    pub(in crate::cutting_stock) fn orientations(&self) -> &[(usize, Orientation)] {
        &self.orientations
    }

    /// Whether the knapsack counts an orientation as wider than it is.
    pub(in crate::cutting_stock) fn overstates(&self, orientation: &Orientation) -> bool {
        let end = self.across.end_of(orientation.width);
        end.is_none_or(|end| self.across.positions()[end] > orientation.width)
    }

    /// The greatest values at these prices, one per orientation.
    ///
    /// A cut is tried only at positions where the value rises. At any other position, the part before the cut is worth
    /// no more than at the position before, and the part after it no less.
    pub(in crate::cutting_stock) fn solve(&self, prices: Vec<i64>) -> Solution<'_> {
        let (rows, columns) = (self.along.count(), self.across.count());
        let mut values = vec![0; rows * columns];
        for (&(i, j), &price) in self.ends.iter().zip(&prices) {
            values[i * columns + j] = values[i * columns + j].max(price);
        }
        let mut rising_rows: Vec<usize> = Vec::new();
        let mut rises = Vec::new();
        for i in 1..rows {
            let (before, row) = values.split_at_mut(i * columns);
            let (previous, row) = (&before[(i - 1) * columns..], &mut row[..columns]);
            row.iter_mut().zip(previous).for_each(|(value, &previous)| *value = (*value).max(previous));
            for &cut in rising_rows.iter().take_while(|&&cut| self.along.is_in_first_half(cut, i)) {
                let remainder = self.along.remainder(i, cut);
                let (first, second) = (&before[cut * columns..], &before[remainder * columns..]);
                for ((value, first), second) in row.iter_mut().zip(first).zip(second) {
                    *value = (*value).max(first + second);
                }
            }
            self.cut_across(row, &mut rises);
            if row != previous {
                rising_rows.push(i);
            }
        }
        Solution { knapsack: self, prices, values }
    }

    /// Raises each value of a row to the greatest that cuts along the roll give; `rises` is scratch space.
    fn cut_across(&self, row: &mut [i64], rises: &mut Vec<(usize, i64)>) {
        rises.clear();
        let mut in_first_half = 0;
        for j in 1..row.len() {
            let mut value = row[j].max(row[j - 1]);
            while let Some(&(cut, _)) = rises.get(in_first_half)
                && self.across.is_in_first_half(cut, j)
            {
                in_first_half += 1;
            }
            for &(cut, first) in &rises[..in_first_half] {
                value = value.max(first + row[self.across.remainder(j, cut)]);
            }
            row[j] = value;
            if value > row[j - 1] {
                rises.push((j, value));
            }
        }
    }
}

impl Solution<'_> {
    /// The greatest value of the whole rectangle.
    pub(in crate::cutting_stock) fn total(&self) -> i64 {
        self.values.last().copied().unwrap_or(0)
    }

    /// For each position along but 0: the length up to it, and the greatest value of that length in full width.
    pub(in crate::cutting_stock) fn by_length(&self) -> impl Iterator<Item = (i64, i64)> + '_ {
        let Knapsack { along, across, .. } = self.knapsack;
        let lengths = along.positions().iter().copied();
        let values = self.values.chunks(across.count()).map(|row| row.last().copied().unwrap_or(0));
        lengths.zip(values).skip(1)
    }

    /// A pattern of greatest value for the length up to a position along, in full width.
    pub(in crate::cutting_stock) fn pattern(&self, position: usize) -> Option<Pattern> {
        self.pattern_within(position, self.knapsack.across.count() - 1)
    }

    /// Value and length of the best section that contains this orientation and is no longer than it.
    pub(super) fn best_with(&self, index: usize) -> (i64, i64) {
        let (i, beside) = self.room_beside(index);
        (self.prices[index] + self.value(i, beside), self.knapsack.along.positions()[i])
    }

    /// The pattern of that section.
    pub(super) fn pattern_with(&self, index: usize) -> Pattern {
        let (i, beside) = self.room_beside(index);
        let (item, orientation) = self.knapsack.orientations[index];
        let piece = Pattern::Item { item, orientation };
        match self.pattern_within(i, beside) {
            Some(pattern) => Pattern::across_roll(piece, pattern),
            None => piece,
        }
    }

    /// Position indices, along and across, of the strip beside this orientation.
    fn room_beside(&self, index: usize) -> (usize, usize) {
        let (i, j) = self.knapsack.ends[index];
        let across = &self.knapsack.across;
        (i, across.remainder(across.count() - 1, j))
    }

    fn value(&self, i: usize, j: usize) -> i64 {
        self.values[i * self.knapsack.across.count() + j]
    }

    /// A pattern of greatest value within the rectangle up to these positions; `None` if the value is 0.
    fn pattern_within(&self, i: usize, j: usize) -> Option<Pattern> {
        let value = self.value(i, j);
        if value == 0 {
            return None;
        }
        let Knapsack { orientations, ends, along, across } = self.knapsack;
        let fits = |&index: &usize| ends[index].0 <= i && ends[index].1 <= j && self.prices[index] == value;
        if let Some(index) = (0..orientations.len()).find(fits) {
            let (item, orientation) = orientations[index];
            return Some(Pattern::Item { item, orientation });
        }
        // Shrink to the smallest rectangle of the same value. No single piece of that value fits there either.
        let i = (0..i).rev().find(|&shorter| self.value(shorter, j) < value).map_or(0, |shorter| shorter + 1);
        let row = &self.values[i * across.count()..=i * across.count() + j];
        let j = row.partition_point(|&narrower| narrower < value);
        // As in the solution, only cuts where the value rises can be the first that gives it.
        let cut = (1..=across.half(j))
            .filter(|&cut| row[cut] > row[cut - 1])
            .find(|&cut| row[cut] + row[across.remainder(j, cut)] == value);
        if let Some(cut) = cut {
            let beside = self.pattern_within(i, across.remainder(j, cut));
            return join(self.pattern_within(i, cut), beside, Pattern::across_roll);
        }
        let cut = (1..=along.half(i))
            .find(|&cut| self.value(cut, j) + self.value(along.remainder(i, cut), j) == value)?;
        let beyond = self.pattern_within(along.remainder(i, cut), j);
        join(self.pattern_within(cut, j), beyond, Pattern::along_roll)
    }
}

fn join(
    first: Option<Pattern>,
    second: Option<Pattern>,
    join: impl Fn(Pattern, Pattern) -> Pattern,
) -> Option<Pattern> {
    match (first, second) {
        (Some(first), Some(second)) => Some(join(first, second)),
        (first, second) => first.or(second),
    }
}
