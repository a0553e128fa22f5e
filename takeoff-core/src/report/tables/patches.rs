//! The felt patches.
use super::super::quantity::Quantities;
use super::{Table, listed, with_slope};
use crate::report::document::{Patch, Takeoff};

/// One row a patch, slope by slope in order of their first posts.
pub fn patches(takeoff: &Takeoff) -> Table<'_> {
    let shown = Quantities(takeoff.display);
    Table::from_rows(with_slope(takeoff, |slope| &slope.patches))
        .text("slope", |(slope, _)| slope.name.as_str())
        .text("patch", |(_, patch)| patch.name.as_str())
        .text("posts", |(_, patch)| listed(&patch.posts))
        .number("left_mm", |(_, patch)| patch.bounds_mm[0])
        .number("lower_mm", |(_, patch)| patch.bounds_mm[1])
        .number("right_mm", |(_, patch)| patch.bounds_mm[2])
        .number("upper_mm", |(_, patch)| patch.bounds_mm[3])
        .text("width", |(_, patch)| shown.short_length(width(patch)))
        .text("height", |(_, patch)| shown.short_length(height(patch)))
        .number_if_any("lap_line_mm", |(_, patch)| patch.lap_line_mm)
        .whole("pieces", |(_, patch)| patch.pieces)
        .number("area_mm2", |(_, patch)| patch.area_mm2)
        .number("perimeter_mm", |(_, patch)| patch.perimeter_mm)
        .whole("staples", |(_, patch)| patch.staples)
        .text("half_round_at", |(_, patch)| listed(&patch.half_round_at))
        .text("round_at", |(_, patch)| listed(&patch.round_at))
        .text("lies_over", |(_, patch)| listed(&patch.lies_over))
        .text("cut_round", |(_, patch)| listed(&patch.cut_round))
        .done()
}

fn width(patch: &Patch) -> f64 {
    let [left, _, right, _] = patch.bounds_mm;
    right - left
}

fn height(patch: &Patch) -> f64 {
    let [_, lower, _, upper] = patch.bounds_mm;
    upper - lower
}
