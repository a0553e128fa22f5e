//! Positions of the patch pieces on the rolls.
use super::super::quantity::Quantities;
use super::{Table, listed};
use crate::report::document::Takeoff;

/// One row a piece, roll by roll and section by section.
pub fn cutting(takeoff: &Takeoff) -> Table<'_> {
    let shown = Quantities(takeoff.display);
    let plans = takeoff.rolls.iter();
    Table::from_rows(plans.flat_map(|plan| plan.pieces.iter().map(move |piece| (plan, piece))).collect())
        .text("underlayment", |(plan, _)| plan.underlayment.as_str())
        .whole("roll", |(_, piece)| piece.roll)
        .whole("section", |(_, piece)| piece.section)
        .text("patch", |(_, piece)| piece.patch.as_str())
        .whole("piece", |(_, piece)| piece.piece)
        .whole("of", |(_, piece)| piece.of)
        .text("posts", |(_, piece)| listed(&piece.posts))
        .number("start_mm", |(_, piece)| piece.start_mm)
        .number("edge_mm", |(_, piece)| piece.edge_mm)
        .number("length_mm", |(_, piece)| piece.length_mm)
        .number("width_mm", |(_, piece)| piece.width_mm)
        .text("start", |(_, piece)| shown.length(piece.start_mm))
        .text("edge", |(_, piece)| shown.short_length(piece.edge_mm))
        .text("length", |(_, piece)| shown.short_length(piece.length_mm))
        .text("width", |(_, piece)| shown.short_length(piece.width_mm))
        .flag("turned", |(_, piece)| piece.turned)
        .done()
}
