//! Roof tiles.
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::profile::Profile;
use crate::units::Length;

/// One kind of roof tile.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    pub(crate) name: String,
    /// Nose to head, `L`.
    pub(crate) length: Length,
    /// Distance from joint to joint, `C`.
    pub(crate) cover: Length,
    pub(crate) pieces: Pieces,
    pub(crate) least_head_lap: Length,
    pub(crate) thickness: Length,
    /// Weight of a tile in grams.
    pub(crate) weight_g: Option<f64>,
    pub(crate) laps: Laps,
    pub(crate) held: Held,
    /// Nails, screws or clips that hold one tile.
    pub(crate) fasteners_each: u32,
    pub(crate) profile: Profile,
}

/// Whether a course is one kind of piece, or pans with covers over their joints.
#[derive(Clone, Debug, PartialEq)]
pub enum Pieces {
    /// One piece a column.
    One {
        /// Overall width, `W = C + S`.
        width: Length,
        /// Which side strip lies under the neighbour.
        lap_side: LapSide,
        /// Where spare tiles come from besides the shop.
        stock: Stock,
    },
    /// In each column a pan centred on the column and a cover centred on the joint.
    PanAndCover {
        /// Overall width of a pan.
        pan_width: Length,
        /// Overall width of a cover.
        cover_width: Length,
        /// Where spare pans come from besides the shop.
        pans: Stock,
        /// Where spare covers come from besides the shop.
        covers: Stock,
    },
}

/// Pieces that need not be bought.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// Already on hand.
    pub(crate) on_hand: u64,
    /// Taken from under the arrays.
    pub(crate) harvest: u64,
    /// JSON Pointer to where the job gives the harvest.
    pub(crate) harvest_path: String,
}

/// Which side strip of a tile lies under its neighbour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LapSide {
    /// The left strip lies under the tile on the left.
    Left,
    /// The right strip lies under the tile on the right.
    Right,
}

/// Whether a tile laps the course below it only, or the one below that too.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Laps {
    /// Greatest exposure `L − H`.
    #[default]
    Single,
    /// Greatest exposure `(L − H)/2`.
    Double,
}

/// How a tile is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Held {
    /// Hung by its lug on a batten.
    Hung,
    /// Nailed or screwed.
    Nailed,
    /// Clipped.
    Clipped,
    /// Bedded in mortar.
    Mortar,
    /// Set in foam.
    Foam,
    /// Set in adhesive.
    Adhesive,
}

impl Held {
    /// Set tiles (mortar, foam, adhesive) can't be loosened and laid back.
    pub fn is_set(self) -> bool {
        matches!(self, Held::Mortar | Held::Foam | Held::Adhesive)
    }
}
