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
use crate::layout::intervals::{Exclusion, permitted_ranges};
use crate::layout::intervals::{FeasibleInterval, feasible_intervals};
use crate::layout::objective::Objective;
use crate::layout::post_cost::PostCostModel;
use crate::model::{Array, Rafters, Rails};
use crate::units::Length;

/// A rail of an array.
pub(crate) struct Rail<'a> {
    pub(crate) rails: &'a Rails,
    pub(crate) rafters: &'a Rafters,
    pub(crate) model: &'a PostCostModel<'a>,
    /// Its place among the array's rails, from the lowest, and its clamp window with the array where the job has it.
    pub(crate) number: usize,
    pub(crate) from: i64,
    pub(crate) to: i64,
    /// How far down and up it reaches with the array's shift; a fixed post leaves it one height only.
    pub(crate) low: i64,
    pub(crate) high: i64,
    pub(crate) lines: Vec<AnchorLine>,
}

/// What a post may stand on, and where along it.
pub(crate) struct AnchorLine {
    pub(crate) anchor: Anchor,
    /// Whether its `u`, or the length of its board, changes with the height.
    crooked: bool,
    u: i64,
    pub(crate) spans: Rc<Vec<FeasibleInterval>>,
}

/// A post that may stand on a rail at one height.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CandidatePost {
    /// Its place in [`Rail::feet`].
    pub(crate) line: usize,
    pub(crate) u: i64,
    pub(crate) objective: Objective,
    /// Whether it is a fixed post, which the rail has to take.
    pub(crate) fixed: bool,
}

/// Spans by where they were looked for: feet that are alike share them.
pub(crate) type IntervalCache = BTreeMap<(i64, i64, i64), Rc<Vec<FeasibleInterval>>>;

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
pub(crate) struct OtherPosts<'a> {
    pub(crate) fixed: &'a [FixedPost],
    pub(crate) exclusion: Exclusion<'a>,
}

impl FixedPost {
    /// It costs what it costs, and can't be better.
    fn line(&self) -> AnchorLine {
        let FixedPost { place, at, money } = *self;
        let (u, v) = (grid(at.u), grid(at.v));
        let span = FeasibleInterval {
            from: v,
            to: v,
            base: Objective { money, ..Objective::default() },
            patch: None,
        };
        AnchorLine { anchor: Anchor::Fixed(place, at), crooked: false, u, spans: Rc::new(vec![span]) }
    }
}

impl<'a> Rail<'a> {
    /// The rails of an array from the lowest up.
    pub(crate) fn of_array(
        array: &'a Array,
        rails: &'a Rails,
        rafters: &'a Rafters,
        model: &'a PostCostModel<'a>,
        others: &OtherPosts<'_>,
        known: &mut IntervalCache,
    ) -> Vec<Rail<'a>> {
        let origin = Point::from(array.at);
        let pitch = grid(array.module_height + array.row_gap);
        let windows = (0..i64::from(array.rows)).flat_map(|row| {
            let anchor = origin.v + row * pitch;
            rails.clamps.iter().map(move |window| (anchor + grid(window.from), anchor + grid(window.to)))
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
            let mut rail = Rail { rails, rafters, model, number, from, to, low, high, lines: Vec::new() };
            if low <= high {
                let assembly = &rails.assembly;
                for anchor in Anchor::all(rafters, rails.blocking, assembly.lag_edge_distance) {
                    let beneath = beneath(&|v| anchor.u_at(rafters, v), (left, right), low, high);
                    rail.lines
                        .extend(beneath.map(|stretch| rail.line(anchor, stretch, &others.exclusion, known)));
                }
                rail.lines.extend(fixed.into_iter().map(FixedPost::line));
            }
            all.push(rail);
        }
        all
    }

    /// Where along a rafter or bay a post may stand; `beneath` is from where to where the array can lie over it.
    fn line(
        &self,
        anchor: Anchor,
        beneath: (i64, i64),
        exclusion: &Exclusion,
        known: &mut IntervalCache,
    ) -> AnchorLine {
        let Rail { rafters, model, low, high, .. } = *self;
        let board_is_crooked = |left| Anchor::Bay(left).is_crooked(rafters);
        let crooked = anchor.is_crooked(rafters) || self.board(anchor).is_some_and(board_is_crooked);
        let u = anchor.u_at(rafters, low);
        let u_at = |v: i64| if crooked { anchor.u_at(rafters, v) } else { u };
        let marked =
            |(low, high)| within(model, &feasible_intervals(model, &u_at, low, high), &[(low, high)]);
        let found = match model.alike(u, low, high).filter(|_| !crooked) {
            Some(column) => {
                known.entry((column, low, high)).or_insert_with(|| Rc::new(marked((low, high)))).clone()
            }
            None => Rc::new(marked((low, high))),
        };
        let stretches =
            permitted_ranges(model.site, model.mover.assembly, exclusion, &u_at, beneath.0, beneath.1);
        let spans =
            if stretches == [(low, high)] { found } else { Rc::new(within(model, &found, &stretches)) };
        AnchorLine { anchor, crooked, u, spans }
    }

    /// Where along the eave a footing is at a height.
    pub(crate) fn u_at(&self, line: usize, v: i64) -> i64 {
        let AnchorLine { anchor, crooked, u, .. } = &self.lines[line];
        if *crooked { anchor.u_at(self.rafters, v) } else { *u }
    }

    /// Whether a footing's `u`, or the length of its board, changes with the height.
    pub(crate) fn is_crooked(&self, line: usize) -> bool {
        self.lines[line].crooked
    }

    /// The span of a footing at a height.
    pub(crate) fn interval_at(&self, line: usize, v: i64) -> Option<&FeasibleInterval> {
        let spans = &self.lines[line].spans;
        let span = spans.get(spans.partition_point(|span| span.to < v))?;
        (span.from <= v).then_some(span)
    }

    /// What a post on a footing costs at a height, in a span that holds it.
    pub(crate) fn objective(&self, line: usize, span: &FeasibleInterval, v: i64) -> Objective {
        let mut objective = span.objective(self.model, Point::new(self.u_at(line, v), v));
        if let Some(left) = self.board(self.lines[line].anchor) {
            let clear = self.rafters.clear_between(left, left + 1, Length::from_nm(v / 2));
            if clear > Length::ZERO {
                objective.money += self.model.board(clear);
            }
        }
        objective
    }

    /// The rafter on the left of the board that a post on a foot stands on, if it does: a post on a rafter that is too
    /// narrow for its lags has one on the right of it.
    fn board(&self, anchor: Anchor) -> Option<usize> {
        let edges = self.rails.assembly.lag_edge_distance;
        match anchor {
            Anchor::Bay(left) => Some(left),
            Anchor::Rafter(rafter) if edges + edges > self.rafters.width => {
                Some(rafter).filter(|_| rafter + 1 < self.rafters.lines.len())
            }
            _ => None,
        }
    }

    /// Whether money may rise up a span: boards between crooked rafters grow longer.
    pub(crate) fn cost_may_rise(&self) -> bool {
        (0..self.lines.len()).any(|line| self.board_changes(line))
    }

    /// Whether the length of a footing's board changes with the height.
    pub(crate) fn board_changes(&self, line: usize) -> bool {
        self.is_crooked(line) && self.board(self.lines[line].anchor).is_some()
    }

    /// Whether a footing's rafter has the number of its turn.
    pub(crate) fn is_in_phase(&self, line: usize, stagger_phase: usize) -> bool {
        let phases = self.rails.stagger.max(1) as usize;
        self.lines[line]
            .anchor
            .number()
            .is_none_or(|number| number % phases == (self.number + stagger_phase) % phases)
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
fn within(
    model: &PostCostModel,
    spans: &[FeasibleInterval],
    stretches: &[(i64, i64)],
) -> Vec<FeasibleInterval> {
    let mut inside = Vec::with_capacity(spans.len());
    for span in spans {
        for &(from, to) in stretches {
            let (from, to) = (span.from.max(from), span.to.min(to));
            if from <= to {
                let (from, to) = model.graduations.within((from, to));
                inside.push(FeasibleInterval { from, to, ..*span });
            }
        }
    }
    inside
}
