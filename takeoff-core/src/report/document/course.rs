//! Courses and columns of tile.
use schemars::JsonSchema;
use serde::Serialize;

use crate::model::{Pieces, Tile};
use crate::slope_takeoff;
use crate::units::Length;

/// One course.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Course {
    /// Number from the eave, 1 is the lowest.
    pub course: u64,
    /// Its noses.
    pub nose_mm: f64,
    /// To the next nose; `None` for the top course.
    pub exposure_mm: Option<f64>,
    /// What it lies under the next course; `None` for the top course.
    pub head_lap_mm: Option<f64>,
    /// Its joint nearest to `u = 0` from the right, so that joints are this plus multiples of the cover.
    pub joint_mm: f64,
}

/// The columns of tile.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Columns {
    /// Joint to joint.
    pub cover_mm: f64,
    /// Overall widths by kind of piece: the tile, or pan and cover.
    pub widths_mm: Vec<f64>,
    /// Tile length.
    pub length_mm: f64,
}

impl Course {
    /// The course at a place of its slope's list.
    pub(super) fn new(place: usize, course: &slope_takeoff::Course) -> Course {
        Course {
            course: place as u64 + 1,
            nose_mm: course.nose.mm(),
            exposure_mm: course.exposure.map(Length::mm),
            head_lap_mm: course.head_lap.map(Length::mm),
            joint_mm: course.joint.mm(),
        }
    }
}

impl From<&Tile> for Columns {
    fn from(tile: &Tile) -> Columns {
        let widths_mm = match tile.pieces {
            Pieces::One { width, .. } => vec![width.mm()],
            Pieces::PanAndCover { pan_width, cover_width, .. } => vec![pan_width.mm(), cover_width.mm()],
        };
        Columns { cover_mm: tile.cover.mm(), widths_mm, length_mm: tile.length.mm() }
    }
}
