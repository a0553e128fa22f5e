//! The cuts.
use super::super::quantity::Quantities;
use super::super::words;
use super::{Table, listed, with_slope};
use crate::cuts::CutKind;
use crate::report::document::{Cut, Takeoff};

/// One row a cut tile, slope by slope, by course, column and piece.
pub fn cuts(takeoff: &Takeoff) -> Table<'_> {
    let shown = Quantities(takeoff.display);
    Table::from_rows(with_slope(takeoff, |slope| &slope.cuts))
        .text("slope", |(slope, _)| slope.name.as_str())
        .text("tile", |(_, cut)| cut.tile.as_str())
        .text("piece", |(_, cut)| cut.piece.as_str())
        .whole("course", |(_, cut)| cut.course)
        .whole("column", |(_, cut)| cut.column)
        .text("kind", |(_, cut)| kind(cut.kind))
        .text("posts", |(_, cut)| listed(&cut.posts))
        .flag("edge_tile", |(_, cut)| cut.edge_tile)
        .number("area_mm2", |(_, cut)| cut.area_mm2)
        .number("blade_path_mm", |(_, cut)| cut.blade_path_mm)
        .number("from_left_mm", |(_, cut)| cut.from_left_mm)
        .number("from_left_developed_mm", |(_, cut)| cut.from_left_developed_mm)
        .number("from_nose_mm", |(_, cut)| cut.from_nose_mm)
        .number("half_width_mm", |(_, cut)| cut.half_width_mm)
        .number("half_height_mm", |(_, cut)| cut.half_height_mm)
        .text("from_left", |(_, cut)| shown.short_length(cut.from_left_mm))
        .text("from_left_developed", |(_, cut)| shown.short_length(cut.from_left_developed_mm))
        .text("from_nose", |(_, cut)| shown.short_length(cut.from_nose_mm))
        .text("width", |(_, cut)| shown.short_length(2.0 * cut.half_width_mm))
        .text("height", |(_, cut)| shown.short_length(2.0 * cut.half_height_mm))
        .flag("rectangle", |(_, cut)| cut.rectangle)
        .text("open_to", |(_, cut)| open_to(cut))
        .done()
}

fn open_to(cut: &Cut) -> String {
    cut.open_to.iter().map(|&side| words::tile_side(side)).collect::<Vec<_>>().join("; ")
}

/// Kind of a cut, as in the document.
fn kind(kind: CutKind) -> &'static str {
    match kind {
        CutKind::Hole => "hole",
        CutKind::Notch => "notch",
        CutKind::Corner => "corner",
        CutKind::Severed => "severed",
    }
}
