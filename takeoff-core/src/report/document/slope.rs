//! A slope.
use schemars::JsonSchema;
use serde::Serialize;

use super::mm::rings_mm;
use super::{
    ArrayTakeoff, BattenPiece, Blocking, Columns, Course, Cut, Patch, PlaceTakeoff, PostTakeoff, ThreeCourse,
    TileWork, Trim,
};
use crate::model::EdgeKind;
use crate::slope_takeoff;
use crate::units::Length;

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

impl From<&slope_takeoff::SlopeTakeoff> for SlopeTakeoff {
    fn from(slope: &slope_takeoff::SlopeTakeoff) -> SlopeTakeoff {
        SlopeTakeoff {
            name: slope.name.clone(),
            pitch: slope.pitch.to_string(),
            slope_factor: slope.pitch.slope_factor(),
            area_mm2: slope.outline.area_mm2(),
            outline_mm: rings_mm(&slope.outline),
            edges: slope.edges.clone(),
            field_mm: rings_mm(&slope.field),
            place: slope.place.as_ref().map(PlaceTakeoff::from),
            courses: slope
                .courses
                .iter()
                .enumerate()
                .map(|(place, course)| Course::new(place, course))
                .collect(),
            columns: Columns::from(&*slope.tile),
            lap_lines_mm: slope.lap_lines.iter().copied().map(Length::mm).collect(),
            rafters_mm: slope.rafters.iter().map(|line| [line.lower.mm(), line.upper.mm()]).collect(),
            posts: slope.posts.iter().map(|post| PostTakeoff::new(slope, post)).collect(),
            arrays: slope.arrays.iter().map(|array| ArrayTakeoff::new(slope, array)).collect(),
            cuts: slope.cuts.iter().map(|cut| Cut::new(slope, cut)).collect(),
            tiles: slope.tiles.iter().map(|tile| TileWork::new(slope, tile)).collect(),
            patches: slope.named_patches().map(|(id, patch)| Patch::new(slope, id, patch)).collect(),
            three_course: slope.three_course.iter().map(|work| ThreeCourse::new(slope, work)).collect(),
            battens: slope.battens.iter().map(|piece| BattenPiece::new(slope, piece)).collect(),
            trim: slope.trim.iter().map(Trim::from).collect(),
            blocking: slope.boards().map(|(post, length)| Blocking::new(slope, post, length)).collect(),
        }
    }
}
