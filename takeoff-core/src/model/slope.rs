//! Roof planes.
use std::sync::Arc;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Array, BlockingWood, LapLines, Post, Rafters, Setback, Tile, Underlayment};
use crate::geometry::SlopePoint;
use crate::units::{Length, Pitch};

impl Slope {
    /// Its posts, in the job's order.
    pub fn posts(&self) -> &[Post] {
        &self.posts
    }
}

/// What an edge of a slope is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum EdgeKind {
    /// The lower edge, over the gutter.
    Eave,
    /// The top edge where two slopes meet.
    Ridge,
    /// The free side edge of a gable.
    Rake,
    /// A slanted outward edge where two slopes meet.
    Hip,
    /// A slanted inward edge where two slopes meet.
    Valley,
    /// Against a wall.
    Wall,
}

/// One roof plane with its tile, underlayment, rafters and posts.
#[derive(Clone, Debug)]
pub struct Slope {
    pub(crate) name: String,
    pub(crate) pitch: Pitch,
    pub(crate) place: Option<Georeference>,
    /// Counter-clockwise as seen from outside; edge `i` runs from vertex `i` to the next.
    pub(crate) outline: Vec<SlopePoint>,
    /// Kind of edge `i` of the outline.
    pub(crate) edges: Vec<Option<EdgeKind>>,
    /// Chimneys, vents, skylights; clockwise.
    pub(crate) holes: Vec<Vec<SlopePoint>>,
    pub(crate) tile: Arc<Tile>,
    /// The noses of the courses, ascending, however the job gives them.
    pub(crate) noses: Vec<Length>,
    /// Overhang of tile over the eave; 0 or more.
    pub(crate) overhang: Length,
    pub(crate) first_joint: Length,
    /// Offset of the joints of course `k`: entry `k mod len`, already multiplied by the cover width.
    pub(crate) bond: Vec<Length>,
    pub(crate) underlayment: Arc<Underlayment>,
    pub(crate) lap_lines: LapLines,
    pub(crate) rafters: Option<Rafters>,
    /// Of the sheathing.
    pub(crate) deck_thickness: Option<Length>,
    pub(crate) blocking: Option<BlockingWood>,
    pub(crate) battens: Option<Battens>,
    pub(crate) perimeter: Option<Perimeter>,
    /// The edges from which posts keep away.
    pub(crate) setbacks: Vec<Setback>,
    /// Tiles walked on.
    pub(crate) walked: u64,
    pub(crate) posts: Vec<Post>,
    /// The arrays that the posts carry; no two of them overlap.
    pub(crate) arrays: Vec<Array>,
}

/// Place of a slope in the world.
#[derive(Clone, Debug, PartialEq)]
pub enum Georeference {
    /// Its origin (east, north, up) and the azimuth of its down-slope direction.
    Given {
        /// East, north, up of `u = v = 0`.
        origin: [Length; 3],
        /// Degrees clockwise from north.
        azimuth_deg: f64,
    },
    /// Fitted to three or more surveyed points (east, north, up).
    Surveyed(Vec<[Length; 3]>),
}

/// Battens under the heads of the courses.
#[derive(Clone, Debug, PartialEq)]
pub struct Battens {
    pub(crate) height: Length,
    /// Down the slope.
    pub(crate) width: Length,
    /// From a tile's head down to the batten's upper edge.
    pub(crate) lug: Length,
}

/// The strip along named edges in which every tile is fastened.
#[derive(Clone, Debug, PartialEq)]
pub struct Perimeter {
    pub(crate) width: Length,
    pub(crate) edges: Vec<EdgeKind>,
}
