//! The sheet of cuts.
use rust_xlsxwriter::XlsxError;

use super::super::words;
use super::measure::{in_units, length};
use super::rows::{Column, sheet_of_rows};
use super::styles::{Kind, Look};
use super::{Book, Sheet};
use crate::report::document::{Cut, SlopeTakeoff};

type Row<'t> = (&'t SlopeTakeoff, &'t Cut);

/// One row a cut tile, slope by slope, by course, column and piece.
pub(super) fn cuts(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let unit = |what| in_units(what, takeoff.display);
    let mm = |mm| length(mm, takeoff.display);
    let (text, size) = (Look::Text, Look::Number(Kind::Length));
    let columns: Vec<Column<Row>> = vec![
        Column::new("slope", 13.0, text, |(slope, _): Row| slope.name.as_str()),
        Column::new("tile", 14.0, text, |(_, cut): Row| cut.tile.as_str()),
        Column::new("piece", 16.0, text, |(_, cut): Row| cut.piece.as_str()),
        Column::new("cut", 9.0, text, |(_, cut): Row| words::cut_kind(cut.kind)),
        Column::new("posts", 12.0, text, |(_, cut): Row| cut.posts.join("; ")),
        Column::new(unit("centre from left edge"), 12.0, size, |(_, cut): Row| mm(cut.from_left_mm)),
        Column::new(unit("the same along the face"), 12.0, size, |(_, cut): Row| {
            mm(cut.from_left_developed_mm)
        }),
        Column::new(unit("centre from nose"), 11.0, size, |(_, cut): Row| mm(cut.from_nose_mm)),
        Column::new(unit("width"), 10.0, size, |(_, cut): Row| mm(2.0 * cut.half_width_mm)),
        Column::new(unit("height"), 10.0, size, |(_, cut): Row| mm(2.0 * cut.half_height_mm)),
        Column::new("shape", 10.0, text, |(_, cut): Row| shape(cut)),
        Column::new("open to", 16.0, text, |(_, cut): Row| open_to(cut)),
        Column::new("edge tile", 8.0, text, |(_, cut): Row| cut.edge_tile),
        Column::new(unit("tile cutting"), 12.0, size, |(_, cut): Row| mm(cut.blade_path_mm)),
    ];
    let rows: Vec<Row> =
        takeoff.slopes.iter().flat_map(|slope| slope.cuts.iter().map(move |cut| (slope, cut))).collect();
    let note = "Each cut in its tile's own frame, face up: measure from the left edge and from the nose. Lengths are \
                rounded for reading; cuts.csv and takeoff.json have them whole.";
    sheet_of_rows(book, "cuts", note, &rows, columns)
}

fn shape(cut: &Cut) -> &'static str {
    if cut.rectangle {
        "rectangle"
    } else if cut.half_width_mm == cut.half_height_mm {
        "round"
    } else {
        "oval"
    }
}

fn open_to(cut: &Cut) -> String {
    cut.open_to.iter().map(|&side| words::tile_side(side)).collect::<Vec<_>>().join("; ")
}
