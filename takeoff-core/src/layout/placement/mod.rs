//! From the best shifts to one placement: among equal objectives the largest margin, on tape graduations.
//!
//! [`band`] finds the band of heights in which a rail keeps its posts and its objective. [`tie_break`] moves the array and
//! the rails to the middle of the bands as far as the windows allow. [`runners_up`](mod@runners_up) does so for other shifts.
mod band;
mod runners_up;
mod tie_break;

pub(crate) use runners_up::runners_up;

use crate::geometry::Point;
use crate::layout::objective::Objective;
use crate::layout::rail::Anchor;

/// An array with its rails and posts, placed. Lengths are in grid steps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Placement {
    pub(crate) objective: Objective,
    /// The lower left corner of its lowest left module.
    pub(crate) at: Point,
    /// From the lowest up.
    pub(crate) rails: Vec<RailPlacement>,
    /// Least distance of its posts from a change of their work, up or down, beyond the least margin.
    pub(crate) spare_margin: i64,
}

/// A rail with its posts, placed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct RailPlacement {
    pub(crate) v: i64,
    pub(crate) objective: Objective,
    /// From left to right: the anchor of each post, and its `u`.
    pub(crate) posts: Vec<(Anchor, i64)>,
    /// Lower end of each post's interval.
    pub(crate) intervals: Vec<i64>,
}

impl Placement {
    /// Whether some post has another anchor or is in another interval.
    pub(crate) fn differs_from(&self, other: &Placement) -> bool {
        let key = |placement: &Placement| -> Vec<(Vec<Anchor>, Vec<i64>)> {
            let anchors = |rail: &RailPlacement| rail.posts.iter().map(|(anchor, _)| *anchor).collect();
            placement.rails.iter().map(|rail| (anchors(rail), rail.intervals.clone())).collect()
        };
        key(self) != key(other)
    }

    /// The places of its posts, rail by rail.
    pub(crate) fn posts(&self) -> Vec<Point> {
        let of_rail = |rail: &RailPlacement| {
            let v = rail.v;
            rail.posts.iter().map(move |&(_, u)| Point::new(u, v)).collect::<Vec<_>>()
        };
        self.rails.iter().flat_map(of_rail).collect()
    }
}
