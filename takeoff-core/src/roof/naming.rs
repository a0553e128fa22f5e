//! What a crew calls a tile.
use super::{Part, TilePiece};
use crate::model::Tile;

/// The name of a tile, or of one piece of it: course and column, both counted from 1 at the lower left.
///
/// The third course's twelfth tile is `C3-12`. Where it falls into several pieces the lowest is `C3-12a`, the next
/// `C3-12b`. Of a two-piece tile the name says which: `C3-12 pan`, `C3-12a cover`. The letter in front keeps a
/// spreadsheet from reading a date.
///
/// `first_column` is the column of its course that counts as the first ([`TileGrid::first_column`]).
///
/// [`TileGrid::first_column`]: super::TileGrid::first_column
pub fn tile_name(TilePiece { tile, piece }: TilePiece, first_column: i64) -> String {
    let (course, column) = (tile.course + 1, tile.column - first_column + 1);
    let letter = piece.map(letters).unwrap_or_default();
    let part = match tile.part {
        Part::Tile => "",
        Part::Pan => " pan",
        Part::Cover => " cover",
    };
    format!("C{course}-{column}{letter}{part}")
}

/// What to order for a part: the tile's name, with `, pan` or `, cover` for a two-piece tile.
pub fn piece_name(tile: &Tile, part: Part) -> String {
    part_name(&tile.name, part)
}

/// The same for a tile by its name.
pub(crate) fn part_name(tile: &str, part: Part) -> String {
    match part {
        Part::Tile => tile.to_owned(),
        Part::Pan => format!("{tile}, pan"),
        Part::Cover => format!("{tile}, cover"),
    }
}

/// `a` to `z`, then `aa`, `ab`…
fn letters(piece: u16) -> String {
    let last = char::from(b'a' + (piece % 26) as u8);
    match (piece / 26).checked_sub(1) {
        None => last.to_string(),
        Some(before) => format!("{}{last}", letters(before)),
    }
}
