//! Limits along a rail: spans, overhangs, least distance, and the zones of shorter spans.
use super::{CandidatePost, Rail};
use crate::geometry::grid;

impl Rail<'_> {
    /// The greatest span of the rail at a height from a post at `from` to the next at `to`: the least of the rails' own and
    /// those of all zones that the span meets.
    pub(super) fn greatest_span(&self, from: i64, to: i64, v: i64) -> i64 {
        let zones = self.rails.zones.iter().filter(|zone| zone.meets(from, to, v));
        let least = zones.map(|zone| zone.greatest_span).fold(self.rails.greatest_span, Ord::min);
        grid(least)
    }

    /// The greatest overhang of the rail at a height between its end and its outermost post, at `from` and `to`.
    fn greatest_overhang(&self, from: i64, to: i64, v: i64) -> i64 {
        let zones = self.rails.zones.iter().filter(|zone| zone.meets(from, to, v));
        let least = zones.map(|zone| zone.greatest_overhang).fold(self.rails.greatest_overhang, Ord::min);
        grid(least)
    }

    /// Whether two neighbouring posts keep the least distance and the greatest span.
    pub(super) fn allows_neighbours(&self, from: i64, to: i64, v: i64) -> bool {
        let distance = to - from;
        distance > 0
            && distance >= grid(self.rails.least_distance)
            && distance <= self.greatest_span(from, to, v)
    }

    /// Whether outermost posts at `first` and `last` carry the rail, `length` long, with its left end at `left`.
    pub(crate) fn carries(&self, first: i64, last: i64, left: i64, length: i64, v: i64) -> bool {
        let right = left + length;
        let (before, after) = (first - left, right - last);
        before >= 0
            && after >= 0
            && before <= self.greatest_overhang(left, first, v)
            && after <= self.greatest_overhang(last, right, v)
    }

    /// Whether posts on these lines carry the rail at another height, within spans, overhangs and the least distance.
    pub(crate) fn posts_carry(&self, posts: &[CandidatePost], v: i64, left: i64, length: i64) -> bool {
        let us: Vec<i64> = posts.iter().map(|post| self.u_at(post.line, v)).collect();
        let (Some(&first), Some(&last)) = (us.first(), us.last()) else { return false };
        us.windows(2).all(|pair| self.allows_neighbours(pair[0], pair[1], v))
            && self.carries(first, last, left, length, v)
    }
}
