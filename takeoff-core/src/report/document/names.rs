//! Names and numbers that a crew uses for posts and tiles of a slope.
use crate::model::PostId;
use crate::roof::TileId;
use crate::slope_takeoff::SlopeTakeoff;

/// The names of some posts.
pub(super) fn post_names(slope: &SlopeTakeoff, posts: &[PostId]) -> Vec<String> {
    posts.iter().map(|&post| slope.post_name(post).to_owned()).collect()
}

/// The number of a tile's column, counted from 1 at the left end of its course.
pub(super) fn column_number(slope: &SlopeTakeoff, tile: TileId) -> i64 {
    tile.column - slope.courses[tile.course as usize].first_column + 1
}
