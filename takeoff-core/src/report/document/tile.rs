//! A tile handled.
use schemars::JsonSchema;
use serde::Serialize;

use super::mm::rings_mm;
use super::names::{column_number, post_names};
use crate::cuts::Footprint;
use crate::deck::{self, TileClass};
use crate::roof::piece_name;
use crate::slope_takeoff;

/// A tile handled.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TileWork {
    /// Its name.
    pub tile: String,
    /// Kind of piece: the tile's name, with `, pan` or `, cover`.
    pub piece: String,
    /// Course number from the eave.
    pub course: u64,
    /// Column number from the left.
    pub column: i64,
    /// What becomes of it.
    pub class: TileClass,
    /// Whether it is cut by the field's edge.
    pub edge_tile: bool,
    /// Whether it lies in the perimeter strip and is refastened.
    pub refasten: bool,
    /// A set tile that would have to be loosened and can't be: excluded from the takeoff.
    pub excluded: bool,
    /// The posts on whose account it is handled.
    pub posts: Vec<String>,
    /// Its visible face before the field's edge clips it: left, lower, right, upper.
    pub face_mm: [f64; 4],
    /// Its clipped footprint, rings of `[u, v]`: outer first.
    pub footprint_mm: Vec<Vec<[f64; 2]>>,
}

impl TileWork {
    /// A tile of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, work: &deck::TileWork) -> TileWork {
        TileWork {
            tile: slope.tile_name(work.which()),
            piece: piece_name(&slope.tile, work.tile.part),
            course: u64::from(work.tile.course) + 1,
            column: column_number(slope, work.tile),
            class: work.class,
            edge_tile: matches!(work.footprint, Footprint::Edge { .. }),
            refasten: work.refasten,
            excluded: work.excluded,
            posts: post_names(slope, &work.posts),
            face_mm: work.face.mm(),
            footprint_mm: rings_mm(&work.footprint.polygon()),
        }
    }
}
