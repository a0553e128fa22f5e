//! The rails of an array, with their anchors and intervals.
use std::collections::BTreeMap;
use std::rc::Rc;

use super::{Anchor, AnchorLine, Rail};
use crate::geometry::{SlopePoint, grid};
use crate::layout::bisection::boundary;
use crate::layout::intervals::{Exclusion, FeasibleInterval, feasible_intervals, permitted_ranges};
use crate::layout::objective::Objective;
use crate::layout::post_cost::PostCostModel;
use crate::model::{Array, Rafters, Rails};

/// Intervals by column key, lowest and highest height: lines with the same key share them.
pub(crate) type IntervalCache = BTreeMap<(i64, i64, i64), Rc<Vec<FeasibleInterval>>>;

/// A fixed post below the array.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FixedPost {
    /// Its index in the slope's list.
    pub(crate) index: usize,
    pub(crate) at: SlopePoint,
    /// Its cost at its place, in millionths of the currency.
    pub(crate) money: i64,
}

/// The other posts of a slope, from an array's point of view.
pub(crate) struct OtherPosts<'a> {
    /// Fixed posts below the array: its rails take them.
    pub(crate) fixed: &'a [FixedPost],
    /// Posts from which its own keep their distance.
    pub(crate) exclusion: Exclusion<'a>,
}

impl FixedPost {
    /// Its line: one place, with its fixed cost. It counts as neither failing nor narrow, for no layout can improve it.
    fn line(&self) -> AnchorLine {
        let FixedPost { index, at, money } = *self;
        let (u, v) = (grid(at.u), grid(at.v));
        let interval = FeasibleInterval { from: v, to: v, base: Objective::from_money(money), patch: None };
        AnchorLine {
            anchor: Anchor::Fixed(index, at),
            is_crooked: false,
            u,
            intervals: Rc::new(vec![interval]),
        }
    }
}

impl<'a> Rail<'a> {
    /// The rails of an array, from the lowest up.
    pub(crate) fn of_array(
        array: &'a Array,
        rails: &'a Rails,
        rafters: &'a Rafters,
        model: &'a PostCostModel<'a>,
        others: &OtherPosts<'_>,
        cache: &mut IntervalCache,
    ) -> Vec<Rail<'a>> {
        let windows = windows(array, rails);
        let (down, up) = (grid(array.shift.down), grid(array.shift.up));
        let bounds = array.bounds();
        let (left, right) = (bounds.left - grid(array.shift.left), bounds.right + grid(array.shift.right));
        let mut all = Vec::with_capacity(windows.len());
        for (number, &(from, to)) in windows.iter().enumerate() {
            let is_own = |post: &&FixedPost| nearest_window(&windows, grid(post.at.v)) == Some(number);
            let fixed: Vec<&FixedPost> = others.fixed.iter().filter(is_own).collect();
            let heights = fixed.iter().map(|post| grid(post.at.v));
            // Fixed posts at two heights leave the rail no height at all: `low` is above `high`.
            let low = heights.clone().fold(from - down, i64::max);
            let high = heights.fold(to + up, i64::min);
            let mut rail = Rail { rails, rafters, model, number, from, to, low, high, lines: Vec::new() };
            if low <= high {
                for anchor in Anchor::all(rafters, rails.blocking, rails.assembly.lag_edge_distance) {
                    let below = heights_between(&|v| anchor.u_at(rafters, v), (left, right), low, high);
                    rail.lines.extend(below.map(|below| rail.line(anchor, below, &others.exclusion, cache)));
                }
                rail.lines.extend(fixed.into_iter().map(FixedPost::line));
            }
            all.push(rail);
        }
        all
    }

    /// The line of an anchor; `below` are the heights at which it can be below the array.
    fn line(
        &self,
        anchor: Anchor,
        below: (i64, i64),
        exclusion: &Exclusion,
        cache: &mut IntervalCache,
    ) -> AnchorLine {
        let Rail { rafters, model, low, high, .. } = *self;
        let has_crooked_board =
            self.board_right_of(anchor).is_some_and(|left| Anchor::Bay(left).is_crooked(rafters));
        let is_crooked = anchor.is_crooked(rafters) || has_crooked_board;
        let u = anchor.u_at(rafters, low);
        let u_at = |v: i64| if is_crooked { anchor.u_at(rafters, v) } else { u };
        let on_whole_rail = || {
            let intervals = feasible_intervals(model, &u_at, low, high);
            Rc::new(within(model, &intervals, &[(low, high)]))
        };
        let intervals = match model.column_key(u, low, high).filter(|_| !is_crooked) {
            Some(key) => cache.entry((key, low, high)).or_insert_with(on_whole_rail).clone(),
            None => on_whole_rail(),
        };
        let ranges = permitted_ranges(model.site, model.mover.assembly, exclusion, &u_at, below.0, below.1);
        let is_whole = ranges == [(low, high)];
        let intervals = if is_whole { intervals } else { Rc::new(within(model, &intervals, &ranges)) };
        AnchorLine { anchor, is_crooked, u, intervals }
    }
}

/// The clamp windows of all rails of an array where the job has it, from the lowest up.
fn windows(array: &Array, rails: &Rails) -> Vec<(i64, i64)> {
    let pitch = grid(array.module_height + array.row_gap);
    let rows = (0..i64::from(array.rows)).map(|row| grid(array.at.v) + row * pitch);
    let of_row = |lower: i64| {
        rails.clamps.iter().map(move |window| (lower + grid(window.from), lower + grid(window.to)))
    };
    rows.flat_map(of_row).collect()
}

/// The window whose middle is nearest to a height: a fixed post is one of that rail.
fn nearest_window(windows: &[(i64, i64)], v: i64) -> Option<usize> {
    let distance = |(from, to): (i64, i64)| (2 * v - from - to).abs();
    let nearest = windows.iter().enumerate().min_by_key(|&(_, &window)| distance(window));
    nearest.map(|(number, _)| number)
}

/// The heights from `low` to `high` at which a line is from `left` to `right`. A crooked one may leave on one side.
fn heights_between(
    u_at: &dyn Fn(i64) -> i64,
    (left, right): (i64, i64),
    low: i64,
    high: i64,
) -> Option<(i64, i64)> {
    let is_inside = |v: i64| (left..=right).contains(&u_at(v));
    match (is_inside(low), is_inside(high)) {
        (true, true) => Some((low, high)),
        (true, false) => Some((low, boundary(low, high, is_inside).0)),
        (false, true) => Some((boundary(high, low, is_inside).0, high)),
        (false, false) => None,
    }
}

/// The parts of intervals inside ranges, from their first tape graduation to their last where they have any.
fn within(
    model: &PostCostModel,
    intervals: &[FeasibleInterval],
    ranges: &[(i64, i64)],
) -> Vec<FeasibleInterval> {
    let mut inside = Vec::with_capacity(intervals.len());
    for interval in intervals {
        for part in ranges.iter().filter_map(|&range| interval.intersection(range)) {
            let (from, to) = model.graduations.within((part.from, part.to));
            inside.push(FeasibleInterval { from, to, ..part });
        }
    }
    inside
}
