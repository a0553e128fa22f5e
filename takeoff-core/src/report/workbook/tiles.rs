//! The sheet of tiles handled.
use rust_xlsxwriter::XlsxError;

use super::super::words;
use super::rows::{Column, sheet_of_rows};
use super::styles::{Kind, Look};
use super::{Book, Sheet};
use crate::report::document::{SlopeTakeoff, TileWork};

type Row<'t> = (&'t SlopeTakeoff, &'t TileWork);

/// One row a tile handled, slope by slope, by course, column and piece.
pub(super) fn tiles(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let text = Look::Text;
    let columns: Vec<Column<Row>> = vec![
        Column::new("slope", 16.0, text, |(slope, _): Row| slope.name.as_str()),
        Column::new("tile", 16.0, text, |(_, tile): Row| tile.tile.as_str()),
        Column::new("piece", 18.0, text, |(_, tile): Row| tile.piece.as_str()),
        Column::new("course", 8.0, Look::Number(Kind::Count), |(_, tile): Row| tile.course),
        Column::new("column", 8.0, Look::Number(Kind::Count), |(_, tile): Row| tile.column as f64),
        Column::new("work", 14.0, text, |(_, tile): Row| words::tile_class(tile.class)),
        Column::new("for posts", 30.0, text, |(_, tile): Row| tile.posts.join("; ")),
        Column::new("edge tile", 9.0, text, |(_, tile): Row| tile.edge_tile),
        Column::new("refasten", 9.0, text, |(_, tile): Row| tile.refasten),
        Column::new("excluded", 9.0, text, |(_, tile): Row| tile.excluded),
    ];
    let rows: Vec<Row> =
        takeoff.slopes.iter().flat_map(|slope| slope.tiles.iter().map(move |tile| (slope, tile))).collect();
    let note = "Every tile removed, cut or raised, with the posts that require it. A set tile that would have to be \
                raised stays in place: it is listed here, but is in no count and no price.";
    sheet_of_rows(book, "tiles", note, &rows, columns)
}
