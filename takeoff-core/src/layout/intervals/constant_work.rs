//! Stretches of a rafter along which the work of a post is constant.
use super::breakpoints::breakpoints;
use crate::geometry::Point;
use crate::layout::bisection::boundary;
use crate::layout::post_cost::{PostCostModel, PostWork};

/// A stretch of `v`, both ends included, with constant work.
pub(super) struct ConstantWork {
    pub(super) from: i64,
    pub(super) to: i64,
    pub(super) work: PostWork,
}

/// The stretches from `low` to `high` of a post whose `u` at `v` is `u_at(v)`, one after the other without a gap.
///
/// # Rule
///
/// Along a straight rafter the work changes at breakpoints only, so one sample a cell decides, and bisection finds the
/// exact place of a change beside its breakpoint, which was rounded down. Along a crooked rafter the breakpoints of its
/// lowest, middle and highest `u` divide the range into cells; inside a cell bisection finds the change. Two changes in
/// one cell that cancel each other are not seen.
pub(super) fn constant_work(
    model: &PostCostModel,
    u_at: &dyn Fn(i64) -> i64,
    low: i64,
    high: i64,
) -> Vec<ConstantWork> {
    let middle = low + (high - low) / 2;
    let mut us = [low, middle, high].map(u_at).to_vec();
    us.dedup();
    let is_straight = us.len() == 1;
    let places = us.iter().flat_map(|&u| breakpoints(model, u, low, high)).collect();
    let mut cells = Cells::between(places, low, high);
    let work = |v: i64| model.work(Point::new(u_at(v), v));

    let mut stretches: Vec<ConstantWork> = Vec::new();
    let mut join = |from: i64, to: i64, work: PostWork| match stretches.last_mut() {
        Some(last) if last.work == work => last.to = to,
        _ => stretches.push(ConstantWork { from, to, work }),
    };
    let mut current = work(low);
    let mut reached = low;
    while let Some((start, end)) = cells.next() {
        let samples = if is_straight { vec![start] } else { vec![start, end] };
        for to in samples {
            let there = work(to);
            while there != current {
                let mut beyond = there.clone();
                let (last, first) = boundary(reached, to, |v| {
                    let found = work(v);
                    let is_same = found == current;
                    if !is_same {
                        beyond = found;
                    }
                    is_same
                });
                join(reached, last, std::mem::replace(&mut current, beyond));
                reached = first;
            }
            join(reached, to, current.clone());
            reached = to;
        }
        join(reached, end, current.clone());
        reached = end;
    }
    stretches
}

/// The cells between breakpoints, without the few nanometres beside each breakpoint.
struct Cells {
    /// First and last places of the gaps, ascending; the last gap is the end of the range.
    gaps: std::vec::IntoIter<(i64, i64)>,
    reached: i64,
}

impl Cells {
    fn between(mut breakpoints: Vec<i64>, low: i64, high: i64) -> Cells {
        breakpoints.sort_unstable();
        let mut gaps: Vec<(i64, i64)> = Vec::with_capacity(breakpoints.len() + 1);
        for breakpoint in breakpoints {
            // A breakpoint was rounded down to a grid step: the change is at it or at the next step. The gap reaches from
            // the whole nanometre below it to the third one above that (six steps), and so holds the change.
            let before = 2 * (breakpoint - 2).div_euclid(2);
            let (before, after) = (before.max(low), (before + 6).min(high));
            match gaps.last_mut() {
                Some(last) if before <= last.1 => last.1 = last.1.max(after),
                _ => gaps.push((before, after)),
            }
        }
        gaps.push((high, high));
        Cells { gaps: gaps.into_iter(), reached: low }
    }

    /// First and last place of the next cell.
    fn next(&mut self) -> Option<(i64, i64)> {
        let (before, after) = self.gaps.next()?;
        let cell = (self.reached, before.max(self.reached));
        self.reached = after;
        Some(cell)
    }
}
