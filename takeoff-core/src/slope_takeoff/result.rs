//! The takeoff of one slope.
use std::sync::Arc;

use crate::cuts::{CutKind, Judged, Opening};
use crate::deck::{
    BattenPiece, DeckWork, HeightStack, Patch, PatchId, Support, ThreeCourse, TileWork, TopFlashingCheck,
    Trim,
};
use crate::geometry::{Polygon, Rect, SlopePoint};
use crate::model::{Array, Assembly, EdgeKind, PostId, RafterLine, Tile};
use crate::relocation::{Margins, Situation};
use crate::roof::{TilePiece, tile_name};
use crate::units::{Area, Length, Pitch, RealLength};

/// One slope.
#[derive(Clone, Debug)]
pub struct SlopeTakeoff {
    /// Its name.
    pub name: String,
    /// Its pitch.
    pub pitch: Pitch,
    /// The outline with its holes.
    pub outline: Polygon,
    /// What edge `i` of the outer ring of the outline is; it runs from vertex `i` to the next.
    pub edges: Vec<Option<EdgeKind>>,
    /// The outline moved down over the eaves.
    pub field: Polygon,
    /// Where the slope stands in the world, if the job says.
    pub place: Option<PlaceTakeoff>,
    /// The tile that it is laid with.
    pub tile: Arc<Tile>,
    /// Courses from the eave up.
    pub courses: Vec<Course>,
    /// Lap lines of the underlayment, ascending.
    pub lap_lines: Vec<Length>,
    /// Centre lines of the rafters, left to right, each by its `u` at the height of the outline's lowest corner and of its
    /// highest.
    pub rafters: Vec<RafterLine>,
    /// Posts in the job's order: [`PostId`] is a place in this list.
    pub posts: Vec<PostTakeoff>,
    /// Arrays of modules in the job's order.
    pub arrays: Vec<ArrayTakeoff>,
    /// Cuts by course, column and piece.
    pub cuts: Vec<Cut>,
    /// Tiles handled, by course, column and piece.
    pub tiles: Vec<TileWork>,
    /// Patches in order of their first post: [`PatchId`] is a place in this list.
    pub patches: Vec<Patch>,
    /// Three-course work, a post each, in the job's order.
    pub three_course: Vec<ThreeCourse>,
    /// Battens cut and reset.
    pub battens: Vec<BattenPiece>,
    /// Ridge, hip and rake trim taken up.
    pub trim: Vec<Trim>,
}

impl SlopeTakeoff {
    /// The name of a post of this slope.
    pub fn post_name(&self, post: PostId) -> &str {
        &self.posts[post.place()].name
    }

    /// The name of a tile of this slope, or of one piece of it.
    pub fn tile_name(&self, which: TilePiece) -> String {
        tile_name(which, self.courses[which.tile.course as usize].first_column)
    }

    /// The patches with what the crew calls them.
    pub fn named_patches(&self) -> impl Iterator<Item = (PatchId, &Patch)> {
        self.patches.iter().enumerate().map(|(place, patch)| (PatchId::new(place), patch))
    }

    /// The blocking boards between rafters: the post that each carries, and its length.
    pub fn boards(&self) -> impl Iterator<Item = (PostId, Length)> {
        let posts = self.posts.iter().enumerate();
        posts.filter_map(|(place, post)| Some((PostId::new(place), post.support?.board?)))
    }
}

/// Where a slope stands in the world.
#[derive(Clone, Debug, PartialEq)]
pub struct PlaceTakeoff {
    /// East, north, up of `u = v = 0`.
    pub origin: [RealLength; 3],
    /// Azimuth of the down-slope direction, degrees clockwise from north.
    pub azimuth_deg: f64,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// How well the plane fits, where it is fitted to surveyed points.
    pub fit: Option<Fit>,
}

/// Distances of surveyed points from the plane that is fitted to them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Root mean square.
    pub rms: RealLength,
    /// Greatest.
    pub greatest: RealLength,
}

/// One course.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Course {
    /// Its noses.
    pub nose: Length,
    /// To the next nose; `None` for the top course.
    pub exposure: Option<Length>,
    /// Head lap under the next course; `None` for the top course.
    pub head_lap: Option<Length>,
    /// Its joint nearest to `u = 0` from the right, so that joints are this plus multiples of the cover.
    pub joint: Length,
    /// The column of its tiles that a crew counts as the first.
    pub first_column: i64,
}

/// One post.
#[derive(Clone, Debug)]
pub struct PostTakeoff {
    /// Its name.
    pub name: String,
    /// Its assembly.
    pub assembly: Arc<Assembly>,
    /// Its point on the deck.
    pub at: SlopePoint,
    /// East, north, up, if the slope's place is known.
    pub world: Option<[RealLength; 3]>,
    /// The opening in the tile, where the post stands.
    pub opening: Opening,
    /// What it meets.
    pub situation: Situation,
    /// Whether a tile is severed.
    pub severed: bool,
    /// The tiles it cuts.
    pub cuts: Vec<TilePiece>,
    /// How far it may land off its place before anything changes.
    pub margin: Margins,
    /// The nearest better place on its rafter, if there is one.
    pub nearest: Option<Nearest>,
    /// The work on the deck.
    pub deck: DeckWork,
    /// The flashing on the tile.
    pub top: TopFlashingCheck,
    /// Heights over the deck.
    pub height: HeightStack,
    /// The wood under it; `None` when the job gives no rafters.
    pub support: Option<Support>,
}

/// An array of modules.
#[derive(Clone, Debug)]
pub struct ArrayTakeoff {
    /// The array as the job has it.
    pub array: Array,
    /// The posts below it.
    pub posts: Vec<PostId>,
}

/// A better place for a post, up or down its rafter.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Nearest {
    /// How far up (negative: down).
    pub up: Length,
    /// The place, up the slope.
    pub v: Length,
    /// What the post would meet there.
    pub situation: Situation,
    /// Kinds of the cuts there.
    pub kinds: Vec<CutKind>,
    /// Least of the four margins there.
    pub least_margin: Length,
}

/// A cut in one tile.
#[derive(Clone, Debug)]
pub struct Cut {
    /// The tile as it lies, and what the opening does to it.
    pub judged: Judged,
    /// Footprint of the whole tile.
    pub whole: Rect,
    /// The posts it is for; several when their openings are judged as one.
    pub posts: Vec<PostId>,
    /// Area taken out.
    pub area: Area,
    /// Length of the saw cut.
    pub blade_path: RealLength,
}

impl Cut {
    /// Which tile, and which piece of it.
    pub fn which(&self) -> TilePiece {
        TilePiece { tile: self.judged.tile, piece: self.judged.footprint.number() }
    }
}
