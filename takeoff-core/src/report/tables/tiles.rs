//! The tiles handled.
use super::super::words;
use super::{Table, listed, with_slope};
use crate::report::document::Takeoff;

/// One row a tile handled, slope by slope, by course, column and piece.
pub fn tiles(takeoff: &Takeoff) -> Table<'_> {
    Table::from_rows(with_slope(takeoff, |slope| &slope.tiles))
        .text("slope", |(slope, _)| slope.name.as_str())
        .text("tile", |(_, tile)| tile.tile.as_str())
        .text("piece", |(_, tile)| tile.piece.as_str())
        .whole("course", |(_, tile)| tile.course)
        .whole("column", |(_, tile)| tile.column)
        .text("class", |(_, tile)| words::tile_class(tile.class))
        .flag("edge_tile", |(_, tile)| tile.edge_tile)
        .flag("refasten", |(_, tile)| tile.refasten)
        .flag("excluded", |(_, tile)| tile.excluded)
        .text("posts", |(_, tile)| listed(&tile.posts))
        .number("face_left_mm", |(_, tile)| tile.face_mm[0])
        .number("face_nose_mm", |(_, tile)| tile.face_mm[1])
        .number("face_right_mm", |(_, tile)| tile.face_mm[2])
        .number("face_top_mm", |(_, tile)| tile.face_mm[3])
        .done()
}
