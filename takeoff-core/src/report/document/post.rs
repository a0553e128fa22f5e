//! A post.
use schemars::JsonSchema;
use serde::Serialize;

use super::{DeckWork, HeightStack, Support, TopCheck};
use crate::cuts::{self, CutKind};
use crate::geometry::to_mm;
use crate::relocation::{Margins, Situation};
use crate::slope_takeoff;
use crate::units::RealLength;

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

impl PostTakeoff {
    /// A post of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, post: &slope_takeoff::PostTakeoff) -> PostTakeoff {
        PostTakeoff {
            name: post.name.clone(),
            assembly: post.assembly.name.clone(),
            u_mm: post.at.u.mm(),
            v_mm: post.at.v.mm(),
            world_mm: post.world.map(|world| world.map(RealLength::mm)),
            opening: Opening::from(&post.opening),
            situation: post.situation,
            severed: post.severed,
            cuts: post.cuts.iter().map(|&which| slope.tile_name(which)).collect(),
            margin: Margin::from(&post.margin),
            nearest: post.nearest.as_ref().map(Nearest::from),
            deck: DeckWork::from(&post.deck),
            top: TopCheck::from(&post.top),
            height: HeightStack::from(&post.height),
            support: post.support.as_ref().map(Support::from),
        }
    }
}

impl From<&cuts::Opening> for Opening {
    fn from(opening: &cuts::Opening) -> Opening {
        let ellipse = &opening.ellipse;
        Opening {
            u_mm: to_mm(ellipse.centre.u),
            v_mm: to_mm(ellipse.centre.v),
            half_width_mm: to_mm(ellipse.a),
            half_height_mm: to_mm(ellipse.b),
            least_clearance_mm: opening.least_clearance_mm,
        }
    }
}

impl From<&Margins> for Margin {
    fn from(margins: &Margins) -> Margin {
        Margin {
            left_mm: margins.left.mm(),
            right_mm: margins.right.mm(),
            down_mm: margins.down.mm(),
            up_mm: margins.up.mm(),
        }
    }
}

impl From<&slope_takeoff::Nearest> for Nearest {
    fn from(nearest: &slope_takeoff::Nearest) -> Nearest {
        Nearest {
            up_mm: nearest.up.mm(),
            v_mm: nearest.v.mm(),
            situation: nearest.situation,
            kinds: nearest.kinds.clone(),
            least_margin_mm: nearest.least_margin.mm(),
        }
    }
}
