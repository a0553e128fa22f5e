//! Spans and overhangs of a rail.
use super::array::Laid;
use super::codes::{FEW_POSTS, OVERHANG, SPAN};
use super::rails::Rail;
use crate::model::{Problem, SpanZone};
use crate::units::Length;

/// The fewest posts of a rail: common practice, for one could turn.
const LEAST_POSTS: usize = 2;

impl Laid<'_> {
    /// A rail has posts enough, and reaches no further between them and beyond them than it may.
    pub(super) fn spans(&self, rail: &Rail) -> Vec<Problem> {
        let number = rail.number + 1;
        let mut found = Vec::new();
        if rail.posts.len() < LEAST_POSTS {
            let what = format!("rail {number} has {} post, and needs {LEAST_POSTS}", rail.posts.len());
            found.push(self.error(FEW_POSTS, what, "add a post"));
        }
        for pair in rail.posts.windows(2) {
            let (from, to) = (pair[0].at.u, pair[1].at.u);
            let (most, by) = self.most(rail, (from, to), self.rails.greatest_span, |zone| zone.greatest_span);
            if to - from > most {
                let [apart, most] = [to - from, most].map(|length| self.show(length));
                let what = format!(
                    "rail {number} spans {apart} from `{}` to `{}`, and may span {most}{by}",
                    pair[0].name, pair[1].name
                );
                found.push(self.error(SPAN, what, "put a post between them"));
            }
        }
        let [left, right] = self.ends();
        let (Some(first), Some(last)) = (rail.posts.first(), rail.posts.last()) else { return found };
        for (post, from, to, side) in [(first, left, first.at.u, "left"), (last, last.at.u, right, "right")] {
            let hangs = to - from;
            let (most, by) =
                self.most(rail, (from, to), self.rails.greatest_overhang, |zone| zone.greatest_overhang);
            if hangs > most {
                let [hangs, most] = [hangs, most].map(|length| self.show(length));
                let what = format!(
                    "rail {number} reaches {hangs} beyond `{}` on the {side}, and may reach {most}{by}",
                    post.name
                );
                found.push(self.error(OVERHANG, what, "put a post nearer to its end"));
            }
        }
        found
    }

    /// Where its rails end: its left and its right edge.
    fn ends(&self) -> [Length; 2] {
        let array = self.array;
        let columns = i64::from(array.columns);
        let width = columns * array.module_width.nm() + (columns - 1) * array.column_gap.nm();
        let left = self.moved.at.u;
        [left, left + Length::from_nm(width)]
    }

    /// The least of the array's limit and of those of all zones that a stretch of a rail meets, and in words whose it is.
    fn most(
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
