//! A post's margin: how far it may land off its place before anything changes.
use crate::geometry::{Point, Rect, grid, whole};
use crate::units::Length;

use super::thresholds::{Axis, thresholds};
use super::{Mover, Neighbours, State};

/// The largest whole-nanometre shifts toward −u, +u, −v, +v up to which the state stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Margins {
    /// Toward −u.
    pub left: Length,
    /// Toward +u.
    pub right: Length,
    /// Toward −v.
    pub down: Length,
    /// Toward +v.
    pub up: Length,
}

impl Margins {
    /// The least of the four.
    pub fn least(&self) -> Length {
        self.left.min(self.right).min(self.down).min(self.up)
    }
}

/// The margins of a post at `at`.
///
/// A shift ends at the field's edge, and where the opening's bounds would come within the least web of another
/// post's, for from there on the two would be judged as one.
pub fn margins(mover: &Mover, at: Point, others: &Others) -> Margins {
    let ends = mover.site.field.reach_from(at);
    let base = mover.state(at);
    let toward = |axis, sign, limit| whole(margin(mover, at, &base, axis, sign, limit, others));
    Margins {
        left: toward(Axis::U, -1, at.u - ends.left),
        right: toward(Axis::U, 1, ends.right - at.u),
        down: toward(Axis::V, -1, at.v - ends.lower),
        up: toward(Axis::V, 1, ends.upper - at.v),
    }
}

/// The other posts on the slope.
pub struct Others<'a> {
    /// Their bounds, by place.
    pub neighbours: &'a Neighbours,
    /// Which of them is the post itself.
    pub post: usize,
}

impl Others<'_> {
    /// Whether the opening of another post is nearer than `web` to `bounds`.
    pub fn any_near(&self, bounds: &Rect, web: i64) -> bool {
        self.neighbours.any_near(bounds, web, self.post)
    }
}

/// The margin one way: `sign` times the move, at most `limit` grid steps.
fn margin(mover: &Mover, at: Point, base: &State, axis: Axis, sign: i64, limit: i64, others: &Others) -> i64 {
    let limit = limit - limit.rem_euclid(2);
    let changed = |by: &i64| mover.state(axis.moved(at, sign * by)) != *base;
    let mut from = 0;
    let mut window = mover.site.grid.cover().max(mover.site.grid.length());
    while from < limit {
        let to = limit.min(from + window);
        let (low, high) = if sign > 0 { (from, to) } else { (-to, -from) };
        // Between two thresholds nothing changes: look at the whole nanometres next to each.
        let thresholds = thresholds(mover, at, axis, low, high).into_iter().map(|by| by * sign);
        let mut moves: Vec<i64> = thresholds.flat_map(whole_moves_beside).collect();
        moves.retain(|&by| from < by && by <= to);
        moves.sort_unstable();
        moves.dedup();
        if let Some(by) = moves.into_iter().find(changed) {
            return until_another(mover, at, axis, sign, by - 2, others);
        }
        from = to;
        window *= 2;
    }
    until_another(mover, at, axis, sign, limit, others)
}

/// The moves by whole nanometres next to a threshold that was rounded to the grid.
fn whole_moves_beside(threshold: i64) -> impl Iterator<Item = i64> {
    let before = 2 * (threshold - 2).div_euclid(2);
    (before..=before + 6).step_by(2)
}

/// The margin cut short where the opening would come within the web of another's that it is now apart from.
fn until_another(mover: &Mover, at: Point, axis: Axis, sign: i64, margin: i64, others: &Others) -> i64 {
    let web = grid(mover.site.practice.least_web);
    let own = mover.opening_at(at).bounds();
    let apart = others.neighbours.way_to_next(&own, axis, sign, web, others.post);
    apart.map_or(margin, |apart| margin.min(apart - apart.rem_euclid(2)))
}
