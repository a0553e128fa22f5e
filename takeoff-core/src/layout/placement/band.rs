//! The band of heights in which a rail keeps its posts at the same objective.
use crate::geometry::grid;
use crate::layout::rail::{CandidatePost, Rail};

/// A rail with its posts, and the band of heights that keeps its objective.
pub(super) struct RailBand {
    pub(super) v: i64,
    pub(super) posts: Vec<CandidatePost>,
    pub(super) from: i64,
    pub(super) to: i64,
}

impl RailBand {
    /// The band round `v`, with the rail's left end at `left`. It is the single height `v` if the cost of a post varies with
    /// the height, a post is fixed, or the posts do not carry the rail at both of its ends.
    pub(super) fn new(rail: &Rail, v: i64, posts: Vec<CandidatePost>, left: i64, length: i64) -> RailBand {
        let (mut from, mut to) = (rail.low, rail.high);
        for post in &posts {
            let interval = rail.interval_at(post.line, v);
            let is_flat = !post.is_fixed && !rail.board_varies(post.line);
            let flat = interval.filter(|interval| {
                is_flat && (interval.patch.is_none() || rail.model.patches_cost_nothing())
            });
            match flat {
                Some(interval) => (from, to) = (from.max(interval.from), to.min(interval.to)),
                None => (from, to) = (v, v),
            }
        }
        for zone in &rail.rails.zones {
            let (lower, upper) = (grid(zone.from.v), grid(zone.to.v));
            if v < lower {
                to = to.min(lower - 2);
            } else if v > upper {
                from = from.max(upper + 2);
            } else {
                (from, to) = (from.max(lower), to.min(upper));
            }
        }
        // Distances between posts on crooked rafters vary evenly: a limit kept at both ends is kept between them.
        let (from, to) = (from.min(v), to.max(v));
        let is_rigid = posts.iter().any(|post| post.is_fixed)
            || ![from, to].iter().all(|&v| rail.posts_carry(&posts, v, left, length));
        let (from, to) = if is_rigid { (v, v) } else { (from, to) };
        RailBand { v, posts, from, to }
    }

    /// Whether it has more than one height.
    pub(super) fn is_free(&self) -> bool {
        self.from < self.to
    }

    /// The distance of its middle from its ends: the largest margin that the rail can add to the least one.
    pub(super) fn half(&self) -> i64 {
        (self.to - self.from) / 2
    }
}
