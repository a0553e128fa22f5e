//! The tiles handled, course by course.
use std::collections::BTreeMap;

use super::super::words;
use super::grid::Grid;
use super::section::Section;
use crate::deck::TileClass;
use crate::report::document::{SlopeTakeoff, Takeoff, TileWork};

/// Tiles of a slope of which more than so many are folded away.
const MANY: usize = 500;

/// The tiles of one course and kind of piece.
struct Course<'t> {
    course: u64,
    piece: &'t str,
    tiles: Vec<&'t TileWork>,
}

/// A table a slope, a row a course.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.slopes.iter().all(|slope| slope.tiles.is_empty()) {
        return None;
    }
    Some(Section::new("tiles", "Tiles removed and raised", |html| {
        html.tag("p")
            .text("Columns from the left, courses from the eave: column 5 of course 3 is the tile C3-5.");
        for slope in &takeoff.slopes {
            let courses = courses(slope);
            let of = |class: TileClass| {
                move |row: &Course| columns(row, |tile| tile.class == class && !tile.excluded)
            };
            Grid::new(format!("Tiles of {}", slope.name), &courses)
                .folded_beyond(MANY, slope.tiles.len())
                .name("course", |row| row.course.to_string())
                .words_if_several("piece", |row| row.piece.to_owned())
                .words(words::tile_class(TileClass::Severed), of(TileClass::Severed))
                .words(words::tile_class(TileClass::Cut), of(TileClass::Cut))
                .words(words::tile_class(TileClass::Removed), of(TileClass::Removed))
                .words(words::tile_class(TileClass::Loosened), of(TileClass::Loosened))
                .words("refastened", |row| columns(row, |tile| tile.refasten))
                .words("set, left in place", |row| columns(row, |tile| tile.excluded))
                .write(html);
        }
    }))
}

/// The tiles of a slope by course, then by piece.
fn courses(slope: &SlopeTakeoff) -> Vec<Course<'_>> {
    let mut by_course: BTreeMap<(u64, &str), Vec<&TileWork>> = BTreeMap::new();
    for tile in &slope.tiles {
        by_course.entry((tile.course, tile.piece.as_str())).or_default().push(tile);
    }
    by_course.into_iter().map(|((course, piece), tiles)| Course { course, piece, tiles }).collect()
}

/// The columns of some tiles of a course, runs of neighbours together: `4 to 7, 9`.
fn columns(row: &Course, wanted: impl Fn(&TileWork) -> bool) -> String {
    let mut columns: Vec<i64> =
        row.tiles.iter().filter(|tile| wanted(tile)).map(|tile| tile.column).collect();
    columns.sort_unstable();
    columns.dedup();
    words::runs(&columns)
}
