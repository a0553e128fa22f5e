//! Whether a post may stand where it does on its slope.
use super::codes::{OFF_SLOPE, SETBACK};
use super::laid::Laid;
use crate::geometry::Point;
use crate::model::{Post, Problem, SetbackViolation};
use crate::roof::Site;

impl Laid<'_> {
    /// A post stands inside the outline, off the holes, and off the setbacks with all that they hold off.
    pub(super) fn ground(&self, site: &Site, post: &Post) -> Vec<Problem> {
        let at = Point::from(post.at);
        if !site.outline.contains(at) || site.outline.has_on_boundary(at) {
            let what = format!("`{}` stands off the slope, in a hole or on an edge", post.name);
            return vec![self.error(OFF_SLOPE, what, "move it onto the slope")];
        }
        let broken = self.slope.setbacks.iter().filter_map(|setback| {
            let (part, distance) = match setback.broken_by(at, &post.assembly)? {
                SetbackViolation::Post(distance) => ("", distance),
                SetbackViolation::Flashing(distance) => ("the deck flashing of ", distance),
            };
            let [is, asked] = [distance, setback.least].map(|length| self.show(length));
            let what = format!("{part}`{}` is {is} from an edge, and must be {asked}", post.name);
            Some(self.error(SETBACK, what, "move it away from the edge"))
        });
        broken.collect()
    }
}
