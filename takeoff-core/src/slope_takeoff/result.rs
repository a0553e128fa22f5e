//! The takeoff of one slope.
use schemars::JsonSchema;
use serde::Serialize;

use crate::cuts::{CutKind, TileSide};
use crate::deck::{
    BattenPiece, Blocking, DeckWork, HeightStack, Patch, Support, ThreeCourse, TileWork, Trim,
};
use crate::model::EdgeKind;
use crate::relocation::Situation;

/// One slope.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SlopeTakeoff {
    /// Its name.
    pub name: String,
    /// Pitch as written.
    pub pitch: String,
    /// `sqrt(1 + (rise/run)²)`.
    pub slope_factor: f64,
    /// Area of the outline on the slope, holes taken out.
    pub area_mm2: f64,
    /// The outline, rings of `[u, v]`: outer first, then holes.
    pub outline_mm: Vec<Vec<[f64; 2]>>,
    /// What edge `i` of the outer ring of the outline is; it runs from vertex `i` to the next.
    pub edges: Vec<Option<EdgeKind>>,
    /// The outline moved down over the eaves, rings of `[u, v]`: outer first, then holes.
    pub field_mm: Vec<Vec<[f64; 2]>>,
    /// Where the slope stands in the world, if the job says.
    pub place: Option<PlaceTakeoff>,
    /// Courses from the eave up.
    pub courses: Vec<Course>,
    /// The columns of tile.
    pub columns: Columns,
    /// Lap lines of the underlayment, ascending.
    pub lap_lines_mm: Vec<f64>,
    /// Centre lines of the rafters, left to right, each by its `u` at the height of the outline's lowest corner and of its
    /// highest.
    pub rafters_mm: Vec<[f64; 2]>,
    /// Posts in the job's order.
    pub posts: Vec<PostTakeoff>,
    /// Arrays of modules in the job's order.
    pub arrays: Vec<ArrayTakeoff>,
    /// Cuts by course, column and piece.
    pub cuts: Vec<Cut>,
    /// Tiles handled, by course, column and piece.
    pub tiles: Vec<TileWork>,
    /// Patches in order of their first post.
    pub patches: Vec<Patch>,
    /// Three-course work, a post each, in the job's order.
    pub three_course: Vec<ThreeCourse>,
    /// Battens cut and reset.
    pub battens: Vec<BattenPiece>,
    /// Ridge, hip and rake trim taken up.
    pub trim: Vec<Trim>,
    /// Blocking boards between rafters.
    pub blocking: Vec<Blocking>,
}

/// Where a slope stands in the world.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PlaceTakeoff {
    /// East, north, up of `u = v = 0`.
    pub origin_mm: [f64; 3],
    /// Azimuth of the down-slope direction, degrees clockwise from north.
    pub azimuth_deg: f64,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Root mean square distance of the surveyed points from the plane.
    pub rms_mm: Option<f64>,
    /// Greatest distance of a surveyed point from the plane.
    pub greatest_mm: Option<f64>,
}

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

/// One post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PostTakeoff {
    /// Its name.
    pub name: String,
    /// Its assembly.
    pub assembly: String,
    /// Its point on the deck, along the eave.
    pub u_mm: f64,
    /// Its point on the deck, up the slope.
    pub v_mm: f64,
    /// East, north, up, if the slope's place is known.
    pub world_mm: Option<[f64; 3]>,
    /// The opening in the tile.
    pub opening: Opening,
    /// What it meets.
    pub situation: Situation,
    /// Whether a tile is severed.
    pub severed: bool,
    /// The tiles it cuts, by name.
    pub cuts: Vec<String>,
    /// How far it may land off its place.
    pub margin: Margin,
    /// The nearest better place on its rafter, if there is one.
    pub nearest: Option<Nearest>,
    /// The work on the deck.
    pub deck: DeckWork,
    /// The flashing on the tile.
    pub top: TopCheck,
    /// Heights over the deck.
    pub height: HeightStack,
    /// The wood under it; `None` when the job gives no rafters.
    pub support: Option<Support>,
}

/// An array of modules.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ArrayTakeoff {
    /// Its name.
    pub name: String,
    /// The rectangle of all its modules, gaps included: left, lower, right, upper.
    pub bounds_mm: [f64; 4],
    /// Modules along the eave.
    pub columns: u64,
    /// Modules up the slope.
    pub rows: u64,
    /// A module along the eave.
    pub module_width_mm: f64,
    /// A module up the slope.
    pub module_height_mm: f64,
    /// From module to module along the eave.
    pub column_gap_mm: f64,
    /// From module to module up the slope.
    pub row_gap_mm: f64,
    /// The posts below it.
    pub posts: Vec<String>,
}

/// The opening in the tile: an ellipse with axes along `u` and `v`.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Opening {
    /// Centre along the eave.
    pub u_mm: f64,
    /// Centre up the slope.
    pub v_mm: f64,
    /// Semi-axis along `u`.
    pub half_width_mm: f64,
    /// Semi-axis along `v`.
    pub half_height_mm: f64,
    /// The least clearance left round the post through both layers of tile.
    pub least_clearance_mm: f64,
}

/// How far a post may land off its place before anything changes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Margin {
    /// Toward −u.
    pub left_mm: f64,
    /// Toward +u.
    pub right_mm: f64,
    /// Toward −v.
    pub down_mm: f64,
    /// Toward +v.
    pub up_mm: f64,
}

/// A better place for a post, up or down its rafter.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Nearest {
    /// How far up (negative: down).
    pub up_mm: f64,
    /// The place.
    pub v_mm: f64,
    /// What the post would meet there.
    pub situation: Situation,
    /// Kinds of the cuts there.
    pub kinds: Vec<CutKind>,
    /// Least of the four margins there.
    pub least_margin_mm: f64,
}

/// The flashing on the tile.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TopCheck {
    /// The course whose visible face holds the opening's centre; `None` where there is no tile.
    pub course: Option<u64>,
    /// The flashing: left, lower, right, upper as it lies, trimmed.
    pub flashing_mm: [f64; 4],
    /// What is trimmed off its upper edge at the tile's head.
    pub trimmed_mm: f64,
    /// How far it goes up under the next course; `None` in the top course (at the ridge).
    pub tuck_mm: Option<f64>,
    /// By how much the tuck falls short of what is asked.
    pub tuck_short_mm: f64,
    /// Cover on each side of the opening.
    pub side_cover_mm: f64,
    /// By how much the side cover falls short of what is asked.
    pub side_short_mm: f64,
    /// Whether tuck and side cover reach what is asked.
    pub passes: bool,
}

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
