//! Feasible intervals: heights at which a post on one rafter keeps the least margin, and its objective there.
use super::constant_work::{ConstantWork, constant_work};
use crate::geometry::{Point, grid};
use crate::layout::objective::Objective;
use crate::layout::post_cost::{PatchExtent, PostCostModel};

/// An interval of `v` with constant work, shortened by the least margin at both ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct FeasibleInterval {
    /// Lowest place of a post, in grid steps.
    pub(crate) from: i64,
    /// Highest place of a post, in grid steps.
    pub(crate) to: i64,
    /// The objective in it, without the felt and staples of a patch.
    pub(crate) base: Objective,
    /// `None` without a patch.
    pub(crate) patch: Option<PatchExtent>,
}

impl FeasibleInterval {
    /// The objective of a post at a place in it.
    pub(crate) fn objective(&self, model: &PostCostModel, at: Point) -> Objective {
        self.base.plus_money(self.patch.map_or(0, |patch| model.patch_cost(&patch, at)))
    }

    /// The part of it in a range; `None` where they have no place in common.
    pub(crate) fn intersection(&self, (from, to): (i64, i64)) -> Option<FeasibleInterval> {
        let (from, to) = (self.from.max(from), self.to.min(to));
        (from <= to).then_some(FeasibleInterval { from, to, ..*self })
    }
}

/// The feasible intervals from `low` to `high` (whole nanometres, in grid steps) of a post whose `u` at `v` is `u_at(v)`:
/// ascending and disjoint. Places outside them are nearer than the least margin to a change of the work, or have no tile.
///
/// # Rule
///
/// A stretch of constant work at least twice the least margin long is used from its ends inward by the least margin. A
/// shorter one is narrow: it is used at the tape graduation nearest to its middle only, and the post counts as one in a
/// narrow interval.
///
/// # Example
///
/// Constant work from 40 to 41 in with a margin of 1/4 in: from 40 1/4 to 40 3/4 in. From 40 to 40 3/8 in: at 40 3/16 in
/// only.
pub(crate) fn feasible_intervals(
    model: &PostCostModel,
    u_at: &dyn Fn(i64) -> i64,
    low: i64,
    high: i64,
) -> Vec<FeasibleInterval> {
    let margin = grid(model.site.practice.least_margin);
    // Twice the margin beyond both ends decides whether a change is near, and whether an interval there is narrow.
    let stretches = constant_work(model, u_at, low - 2 * margin, high + 2 * margin);
    let mut intervals = Vec::with_capacity(stretches.len());
    for ConstantWork { from: start, to: end, work } in stretches {
        if !work.meets_tile() {
            continue;
        }
        let (inner_start, inner_end) = (start + margin, end - margin);
        let (from, to, narrow) = if inner_start <= inner_end {
            (inner_start, inner_end, 0)
        } else {
            let middle = model.graduations.nearest((start + end) / 2, start, end);
            (middle, middle, 1)
        };
        let base = Objective { narrow, ..model.base(&work) };
        intervals.extend(FeasibleInterval { from, to, base, patch: work.patch }.intersection((low, high)));
    }
    intervals
}
