//! The place of a post on its slope: outline, holes, setbacks.
use super::array::LaidArray;
use super::codes::{OFF_SLOPE, SETBACK};
use super::edges::{deck_flashing, distance_of_point, distance_of_rect, point_is_near, rect_is_near};
use crate::geometry::{Point, Polygon, grid};
use crate::model::{Post, Problem, Setback};
use crate::units::Length;

impl LaidArray<'_> {
    /// A post is inside the outline and off the holes. It keeps the setbacks, and so does its deck flashing where they ask
    /// for it.
    pub(super) fn slope_limits(&self, outline: &Polygon, post: &Post) -> Vec<Problem> {
        let at = Point::from(post.at);
        if !outline.contains(at) || outline.has_on_boundary(at) {
            let what = format!("`{}` stands off the slope, in a hole or on an edge", post.name);
            return vec![self.problem(OFF_SLOPE, what, "move it onto the slope")];
        }
        let broken = self.slope.setbacks.iter().filter_map(|setback| {
            let (part, distance) = violation(setback, post)?;
            let [is, least] = [distance, setback.least].map(|length| self.show(length));
            let what = format!("{part}`{}` is {is} from an edge; the setback is {least}", post.name);
            Some(self.problem(SETBACK, what, "move it away from the edge"))
        });
        broken.collect()
    }
}

/// The part of a post that is too near to the edge of a setback, in words, and its distance. At exactly the least distance
/// the setback is kept.
fn violation(setback: &Setback, post: &Post) -> Option<(&'static str, Length)> {
    let (edge, least, at) = (&setback.edge, grid(setback.least), Point::from(post.at));
    if point_is_near(at, edge, least) {
        return Some(("", distance_of_point(at, edge)));
    }
    let flashing = deck_flashing(post);
    let is_broken = setback.holds_flashing && rect_is_near(&flashing, edge, least);
    is_broken.then(|| ("the deck flashing of ", distance_of_rect(&flashing, edge)))
}
