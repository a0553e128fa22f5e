//! A rail: how far it can be moved, what its posts may stand on, and what a post costs there.
mod anchor;
mod height_table;
mod shortest_path;

pub(crate) use anchor::*;
pub(crate) use height_table::*;
pub(crate) use shortest_path::*;

use std::collections::BTreeMap;
use std::rc::Rc;

use crate::geometry::{Point, SlopePoint, grid};
use crate::layout::intervals::{Keep, allowed};
use crate::layout::intervals::{Span, spans};
use crate::layout::objective::Score;
use crate::layout::post_cost::Trial;
use crate::model::{Array, Rafters, Rails};
use crate::units::Length;

/// A rail of an array.
pub(crate) struct Rail<'a> {
    pub(crate) rails: &'a Rails,
    pub(crate) rafters: &'a Rafters,
    pub(crate) trial: &'a Trial<'a>,
    /// Its place among the array's rails, from the lowest, and its clamp window with the array where the job has it.
    pub(crate) number: usize,
    pub(crate) from: i64,
    pub(crate) to: i64,
    /// How far down and up it reaches with the array's shift; a fixed post leaves it one height only.
    pub(crate) low: i64,
    pub(crate) high: i64,
    pub(crate) feet: Vec<Footing>,
}

/// What a post may stand on, and where along it.
pub(crate) struct Footing {
    pub(crate) foot: Foot,
    /// Whether its `u`, or the length of its board, changes with the height.
    crooked: bool,
    u: i64,
    pub(crate) spans: Rc<Vec<Span>>,
}

/// A post that may stand on a rail at one height.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Standing {
    /// Its place in [`Rail::feet`].
    pub(crate) footing: usize,
    pub(crate) u: i64,
    pub(crate) score: Score,
    /// Whether it is a fixed post, which the rail has to take.
    pub(crate) fixed: bool,
}

/// Spans by where they were looked for: feet that are alike share them.
pub(crate) type Known = BTreeMap<(i64, i64, i64), Rc<Vec<Span>>>;

/// A post that stays, below the array.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FixedPost {
    /// Its place in the slope's list.
    pub(crate) place: usize,
    pub(crate) at: SlopePoint,
    /// What it costs where it is.
    pub(crate) money: i64,
}

/// The posts of a slope that a rail has to take, and those it keeps away from.
pub(crate) struct Others<'a> {
    pub(crate) fixed: &'a [FixedPost],
    pub(crate) keep: Keep<'a>,
}

impl FixedPost {
    /// It costs what it costs, and can't be better.
    fn footing(&self) -> Footing {
        let FixedPost { place, at, money } = *self;
        let (u, v) = (grid(at.u), grid(at.v));
        let span = Span { from: v, to: v, base: Score { money, ..Score::default() }, sheet: None };
        Footing { foot: Foot::Fixed(place, at), crooked: false, u, spans: Rc::new(vec![span]) }
    }
}

impl<'a> Rail<'a> {
    /// The rails of an array from the lowest up.
    pub(crate) fn of_array(
        array: &'a Array,
        rails: &'a Rails,
        rafters: &'a Rafters,
        trial: &'a Trial<'a>,
        others: &Others<'_>,
        known: &mut Known,
    ) -> Vec<Rail<'a>> {
        let origin = Point::from(array.at);
        let pitch = grid(array.module_height + array.row_gap);
        let windows = (0..i64::from(array.rows)).flat_map(|row| {
            let foot = origin.v + row * pitch;
            rails.clamps.iter().map(move |window| (foot + grid(window.from), foot + grid(window.to)))
        });
        let windows: Vec<(i64, i64)> = windows.collect();
        let (down, up) = (grid(array.shift.down), grid(array.shift.up));
        // A fixed post is on the rail whose middle it is nearest to.
        let away = |v: i64, (from, to): (i64, i64)| (2 * v - from - to).abs();
        let rail_of = |v: i64| {
            let nearest = windows.iter().enumerate().min_by_key(|&(_, &window)| away(v, window));
            nearest.map(|(number, _)| number)
        };
        let bounds = array.bounds();
        let (left, right) = (bounds.left - grid(array.shift.left), bounds.right + grid(array.shift.right));
        let mut all = Vec::with_capacity(windows.len());
        for (number, &(from, to)) in windows.iter().enumerate() {
            let fixed: Vec<_> =
                others.fixed.iter().filter(|post| rail_of(grid(post.at.v)) == Some(number)).collect();
            let heights = fixed.iter().map(|post| grid(post.at.v));
            // Fixed posts of two heights leave the rail no place at all.
            let low = heights.clone().fold(from - down, i64::max);
            let high = heights.fold(to + up, i64::min);
            let mut rail = Rail { rails, rafters, trial, number, from, to, low, high, feet: Vec::new() };
            if low <= high {
                let assembly = &rails.assembly;
                for foot in Foot::all(rafters, rails.blocking, assembly.lag_edge_distance) {
                    let beneath = beneath(&|v| foot.u_at(rafters, v), (left, right), low, high);
                    rail.feet.extend(beneath.map(|stretch| rail.footing(foot, stretch, &others.keep, known)));
                }
                rail.feet.extend(fixed.into_iter().map(FixedPost::footing));
            }
            all.push(rail);
        }
        all
    }

    /// Where along a rafter or bay a post may stand; `beneath` is from where to where the array can lie over it.
    fn footing(&self, foot: Foot, beneath: (i64, i64), keep: &Keep, known: &mut Known) -> Footing {
        let Rail { rafters, trial, low, high, .. } = *self;
        let board_is_crooked = |left| Foot::Bay(left).is_crooked(rafters);
        let crooked = foot.is_crooked(rafters) || self.board(foot).is_some_and(board_is_crooked);
        let u = foot.u_at(rafters, low);
        let u_at = |v: i64| if crooked { foot.u_at(rafters, v) } else { u };
        let marked = |(low, high)| within(trial, &spans(trial, &u_at, low, high), &[(low, high)]);
        let found = match trial.alike(u, low, high).filter(|_| !crooked) {
            Some(column) => {
                known.entry((column, low, high)).or_insert_with(|| Rc::new(marked((low, high)))).clone()
            }
            None => Rc::new(marked((low, high))),
        };
        let stretches = allowed(trial.site, trial.mover.assembly, keep, &u_at, beneath.0, beneath.1);
        let spans =
            if stretches == [(low, high)] { found } else { Rc::new(within(trial, &found, &stretches)) };
        Footing { foot, crooked, u, spans }
    }

    /// Where along the eave a footing is at a height.
    pub(crate) fn u_at(&self, footing: usize, v: i64) -> i64 {
        let Footing { foot, crooked, u, .. } = &self.feet[footing];
        if *crooked { foot.u_at(self.rafters, v) } else { *u }
    }

    /// Whether a footing's `u`, or the length of its board, changes with the height.
    pub(crate) fn is_crooked(&self, footing: usize) -> bool {
        self.feet[footing].crooked
    }

    /// The span of a footing at a height.
    pub(crate) fn span_at(&self, footing: usize, v: i64) -> Option<&Span> {
        let spans = &self.feet[footing].spans;
        let span = spans.get(spans.partition_point(|span| span.to < v))?;
        (span.from <= v).then_some(span)
    }

    /// What a post on a footing costs at a height, in a span that holds it.
    pub(crate) fn score(&self, footing: usize, span: &Span, v: i64) -> Score {
        let mut score = span.score(self.trial, Point::new(self.u_at(footing, v), v));
        if let Some(left) = self.board(self.feet[footing].foot) {
            let clear = self.rafters.clear_between(left, left + 1, Length::from_nm(v / 2));
            if clear > Length::ZERO {
                score.money += self.trial.board(clear);
            }
        }
        score
    }

    /// The rafter on the left of the board that a post on a foot stands on, if it does: a post on a rafter that is too
    /// narrow for its lags has one on the right of it.
    fn board(&self, foot: Foot) -> Option<usize> {
        let edges = self.rails.assembly.lag_edge_distance;
        match foot {
            Foot::Bay(left) => Some(left),
            Foot::Rafter(rafter) if edges + edges > self.rafters.width => {
                Some(rafter).filter(|_| rafter + 1 < self.rafters.lines.len())
            }
            _ => None,
        }
    }

    /// Whether money may rise up a span: boards between crooked rafters grow longer.
    pub(crate) fn may_rise(&self) -> bool {
        (0..self.feet.len()).any(|footing| self.board_changes(footing))
    }

    /// Whether the length of a footing's board changes with the height.
    pub(crate) fn board_changes(&self, footing: usize) -> bool {
        self.is_crooked(footing) && self.board(self.feet[footing].foot).is_some()
    }

    /// Whether a footing's rafter has the number of its turn.
    pub(crate) fn has_turn(&self, footing: usize, phase: usize) -> bool {
        let turns = self.rails.stagger.max(1) as usize;
        self.feet[footing].foot.number().is_none_or(|number| number % turns == (self.number + phase) % turns)
    }
}

/// The heights from `low` to `high` at which a foot is from `left` to `right`; one that runs crooked may leave on one side.
fn beneath(u_at: &dyn Fn(i64) -> i64, (left, right): (i64, i64), low: i64, high: i64) -> Option<(i64, i64)> {
    let inside = |v: i64| (left..=right).contains(&u_at(v));
    let (mut same, mut other) = match (inside(low), inside(high)) {
        (true, true) => return Some((low, high)),
        (false, false) => return None,
        (true, false) => (low, high),
        (false, true) => (high, low),
    };
    let (end, is_low) = (same, same == low);
    while (other - same).abs() > 2 {
        let middle = 2 * ((same + other) / 2).div_euclid(2);
        if inside(middle) { same = middle } else { other = middle }
    }
    Some(if is_low { (end, same) } else { (same, end) })
}

/// Spans cut down to what is allowed, and to the marks of the tape where they have any.
fn within(trial: &Trial, spans: &[Span], stretches: &[(i64, i64)]) -> Vec<Span> {
    let mut inside = Vec::with_capacity(spans.len());
    for span in spans {
        for &(from, to) in stretches {
            let (from, to) = (span.from.max(from), span.to.min(to));
            if from <= to {
                let (from, to) = trial.marks.within((from, to));
                inside.push(Span { from, to, ..*span });
            }
        }
    }
    inside
}
