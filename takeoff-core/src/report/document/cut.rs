//! A cut in one tile.
use schemars::JsonSchema;
use serde::Serialize;

use super::names::{column_number, post_names};
use crate::cuts::{CutKind, Footprint, Shape, TileSide};
use crate::geometry::to_mm;
use crate::roof::piece_name;
use crate::slope_takeoff;

/// A cut in one tile.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Cut {
    /// The tile's name: course, column, and piece where there are several.
    pub tile: String,
    /// Kind of piece: the tile's name, with `, pan` or `, cover`.
    pub piece: String,
    /// Course number from the eave.
    pub course: u64,
    /// Column number from the left.
    pub column: i64,
    /// Kind of cut.
    pub kind: CutKind,
    /// The posts it is for; several when their openings are judged as one.
    pub posts: Vec<String>,
    /// Whether the tile is cut by the field's edge.
    pub edge_tile: bool,
    /// Area taken out.
    pub area_mm2: f64,
    /// Length of the saw's way.
    pub blade_path_mm: f64,
    /// Centre of the opening from the tile's left edge, face up, in plan.
    pub from_left_mm: f64,
    /// The same along the profile's face.
    pub from_left_developed_mm: f64,
    /// Centre of the opening from the nose.
    pub from_nose_mm: f64,
    /// Semi-axis (half the width, for openings judged as one) along `u`.
    pub half_width_mm: f64,
    /// Semi-axis (half the height) along `v`.
    pub half_height_mm: f64,
    /// Whether the opening is the rectangle round several.
    pub rectangle: bool,
    /// The sides it runs out of, as laid.
    pub open_to: Vec<TileSide>,
}

impl Cut {
    /// A cut of a slope; its dimensions are in the tile's own frame, from nose and left edge, face up.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, cut: &slope_takeoff::Cut) -> Cut {
        let judged = &cut.judged;
        let bounds = judged.shape.bounds();
        // Twice the centre is whole on the grid.
        let middle = |low: i64, high: i64, from: i64| to_mm(low + high - 2 * from) / 2.0;
        let from_left_mm = middle(bounds.left, bounds.right, cut.whole.left);
        Cut {
            tile: slope.tile_name(cut.which()),
            piece: piece_name(&slope.tile, judged.tile.part),
            course: u64::from(judged.tile.course) + 1,
            column: column_number(slope, judged.tile),
            kind: judged.kind(),
            posts: post_names(slope, &cut.posts),
            edge_tile: matches!(judged.footprint, Footprint::Edge { .. }),
            area_mm2: cut.area.mm2(),
            blade_path_mm: cut.blade_path.mm(),
            from_left_mm,
            from_left_developed_mm: slope.tile.profile.developed(from_left_mm),
            from_nose_mm: middle(bounds.lower, bounds.upper, cut.whole.lower),
            half_width_mm: to_mm(bounds.right - bounds.left) / 2.0,
            half_height_mm: to_mm(bounds.upper - bounds.lower) / 2.0,
            rectangle: matches!(judged.shape, Shape::Rect(_)),
            open_to: judged.open_to(&cut.whole),
        }
    }
}
