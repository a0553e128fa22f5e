//! Where along the slope a post on one rafter may stand, and what it costs there.
use crate::geometry::{Point, grid};

use super::breakpoints::breakpoints;
use crate::layout::objective::Objective;
use crate::layout::post_cost::{PatchExtent, PostCostModel, PostWork};

/// An interval of `v` in which the work is the same, already shortened by the least margin at both ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct FeasibleInterval {
    /// From where to where a post may stand, both included, in grid steps.
    pub(crate) from: i64,
    pub(crate) to: i64,
    /// What it costs there, besides the felt and staples of a patch.
    pub(crate) base: Objective,
    /// Its patch.
    pub(crate) patch: Option<PatchExtent>,
}

impl FeasibleInterval {
    /// What a post at a place in it costs.
    pub(crate) fn objective(&self, model: &PostCostModel, at: Point) -> Objective {
        let sheet = self.patch.map_or(0, |sheet| model.patch_cost(&sheet, at));
        Objective { money: self.base.money + sheet, ..self.base }
    }
}

/// The spans from `low` to `high` (whole nanometres, in grid steps) of a post whose `u` at `v` is `u_at(v)`; ascending,
/// apart from each other. What lies outside of them is too near to a change of the work, or has no tile.
///
/// # Rule
///
/// An interval between two changes is used from its ends inward by the least margin; one shorter than twice that at
/// its middle only (the mark of the tape nearest to it), and such a post counts as thin.
pub(crate) fn feasible_intervals(
    model: &PostCostModel,
    u_at: &dyn Fn(i64) -> i64,
    low: i64,
    high: i64,
) -> Vec<FeasibleInterval> {
    let margin = grid(model.site.practice.least_margin);
    // What lies beyond the ends decides whether they are near to a change, and whether an interval there is short.
    let (from, to) = (low - 2 * margin, high + 2 * margin);
    let stretches = stretches(model, u_at, from, to);
    let mut spans = Vec::with_capacity(stretches.len());
    for ConstantWork { from: start, to: end, work } in stretches {
        if !work.is_possible() {
            continue;
        }
        let base = model.base(&work);
        let (inner_start, inner_end) = (start + margin, end - margin);
        let (from, to, thin) = if inner_start <= inner_end {
            (inner_start, inner_end, 0)
        } else {
            let middle = model.graduations.nearest((start + end) / 2, start, end);
            (middle, middle, 1)
        };
        let (from, to) = (from.max(low), to.min(high));
        if from <= to {
            spans.push(FeasibleInterval {
                from,
                to,
                base: Objective { narrow: thin, ..base },
                patch: work.patch,
            });
        }
    }
    spans
}

/// A stretch of `v`, both ends included, with one and the same work.
struct ConstantWork {
    from: i64,
    to: i64,
    work: PostWork,
}

/// The stretches from `low` to `high`, one after the other without a gap.
fn stretches(model: &PostCostModel, u_at: &dyn Fn(i64) -> i64, low: i64, high: i64) -> Vec<ConstantWork> {
    let middle = low + (high - low) / 2;
    let mut us = [low, middle, high].map(u_at).to_vec();
    us.dedup();
    let straight = us.len() == 1;
    let mut cells =
        Cells::between(us.iter().flat_map(|&u| breakpoints(model, u, low, high)).collect(), low, high);
    let work = |v: i64| model.work(Point::new(u_at(v), v));

    let mut stretches: Vec<ConstantWork> = Vec::new();
    let mut join = |from: i64, to: i64, work: PostWork| match stretches.last_mut() {
        Some(last) if last.work == work => last.to = to,
        _ => stretches.push(ConstantWork { from, to, work }),
    };
    let mut known = work(low);
    let mut reached = low;
    while let Some((start, end)) = cells.next() {
        // From cell to cell, and inside a cell of a crooked rafter, the change is looked for by halving.
        let ends = if straight { vec![start] } else { vec![start, end] };
        for to in ends {
            let there = work(to);
            while there != known {
                let (mut same, mut other) = (reached, to);
                let mut beyond = there.clone();
                while other - same > 2 {
                    let between = 2 * ((same + other) / 2).div_euclid(2);
                    let found = work(between);
                    if found == known { same = between } else { (other, beyond) = (between, found) }
                }
                join(reached, same, std::mem::replace(&mut known, beyond));
                reached = other;
            }
            join(reached, to, known.clone());
            reached = to;
        }
        join(reached, end, known.clone());
        reached = end;
    }
    stretches
}

/// The cells between changes: whole nanometres, a few of them beside each change left out.
struct Cells {
    /// First and last places of the gaps, ascending, the ends of the way included.
    edges: std::vec::IntoIter<(i64, i64)>,
    reached: i64,
}

impl Cells {
    fn between(mut changes: Vec<i64>, low: i64, high: i64) -> Cells {
        changes.sort_unstable();
        let mut gaps: Vec<(i64, i64)> = Vec::with_capacity(changes.len() + 1);
        for change in changes {
            // A change was rounded down, and the grid is twice as fine as whole nanometres.
            let before = 2 * (change - 2).div_euclid(2);
            let (before, after) = (before.max(low), (before + 6).min(high));
            match gaps.last_mut() {
                Some(last) if before <= last.1 => last.1 = last.1.max(after),
                _ => gaps.push((before, after)),
            }
        }
        gaps.push((high, high));
        Cells { edges: gaps.into_iter(), reached: low }
    }

    fn next(&mut self) -> Option<(i64, i64)> {
        let (before, after) = self.edges.next()?;
        let cell = (self.reached, before.max(self.reached));
        self.reached = after;
        Some(cell)
    }
}
