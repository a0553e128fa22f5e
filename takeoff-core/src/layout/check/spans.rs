//! Spans and overhangs of a rail.
use super::array::LaidArray;
use super::codes::{FEW_POSTS, OVERHANG, SPAN};
use super::extent::Extent;
use super::rails::Rail;
use crate::model::{Problem, SpanZone};
use crate::units::Length;

/// The fewest posts of a rail: common practice, since a rail on one post can turn.
const LEAST_POSTS: usize = 2;

impl LaidArray<'_> {
    /// A rail has enough posts, and its spans and overhangs are within their limits.
    pub(super) fn spans(&self, rail: &Rail) -> Vec<Problem> {
        let number = rail.number + 1;
        let mut found = Vec::new();
        if rail.posts.len() < LEAST_POSTS {
            let what = format!("rail {number} has {} post; it needs {LEAST_POSTS}", rail.posts.len());
            found.push(self.problem(FEW_POSTS, what, "add a post"));
        }
        for pair in rail.posts.windows(2) {
            let (from, to) = (pair[0].at.u, pair[1].at.u);
            let (most, zone) =
                self.limit(rail, (from, to), self.rails.greatest_span, |zone| zone.greatest_span);
            if to - from > most {
                let [span, most] = [to - from, most].map(|length| self.show(length));
                let what = format!(
                    "rail {number} spans {span} from `{}` to `{}`; the limit is {most}{zone}",
                    pair[0].name, pair[1].name
                );
                found.push(self.problem(SPAN, what, "put a post between them"));
            }
        }
        let Extent { left, right, .. } = Extent::new(self.moved);
        let (Some(first), Some(last)) = (rail.posts.first(), rail.posts.last()) else { return found };
        for (post, from, to, side) in [(first, left, first.at.u, "left"), (last, last.at.u, right, "right")] {
            let (most, zone) =
                self.limit(rail, (from, to), self.rails.greatest_overhang, |zone| zone.greatest_overhang);
            if to - from > most {
                let [overhang, most] = [to - from, most].map(|length| self.show(length));
                let what = format!(
                    "rail {number} overhangs `{}` by {overhang} on the {side}; the limit is {most}{zone}",
                    post.name
                );
                found.push(self.problem(OVERHANG, what, "put a post nearer to its end"));
            }
        }
        found
    }

    /// The least of the array's limit and of those of all zones that a stretch of a rail meets; and the name of the zone, in
    /// words, if it is a zone's.
    fn limit(
        &self,
        rail: &Rail,
        (from, to): (Length, Length),
        of_array: Length,
        of_zone: fn(&SpanZone) -> Length,
    ) -> (Length, String) {
        let meets = |zone: &&SpanZone| {
            zone.from.v <= rail.v && rail.v <= zone.to.v && from <= zone.to.u && zone.from.u <= to
        };
        let zone = self.rails.zones.iter().filter(meets).min_by_key(|zone| of_zone(zone));
        match zone.filter(|zone| of_zone(zone) < of_array) {
            Some(zone) => (of_zone(zone), format!(" in the zone `{}`", zone.name)),
            None => (of_array, String::new()),
        }
    }
}
