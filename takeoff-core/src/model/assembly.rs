//! Posts with their flashings, fasteners and sealant.
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Lags;
use crate::units::Length;

/// A post with its flashings, fasteners and sealant.
#[derive(Clone, Debug, PartialEq)]
pub struct Assembly {
    pub(crate) name: String,
    pub(crate) post_diameter: Length,
    pub(crate) clearance: Length,
    pub(crate) axis: Axis,
    /// Diameters of the hole saws at hand, ascending.
    pub(crate) hole_saws: Vec<Length>,
    /// Top of the post over the deck.
    pub(crate) post_height: Option<Length>,
    /// Height over the deck of the surface between the two layers of a head lap, if the job gives it.
    pub(crate) lap_surface_height: Option<Length>,
    /// Least distance of a lag from the edge of its rafter.
    pub(crate) lag_edge_distance: Length,
    pub(crate) lags: Option<Lags>,
    pub(crate) deck_flashing: DeckFlashing,
    pub(crate) top_flashing: TopFlashing,
    pub(crate) beads: Vec<Bead>,
    pub(crate) pilot_holes: Vec<PilotHoles>,
    pub(crate) dabs: Vec<Dabs>,
    pub(crate) items: Vec<Item>,
    /// What one blocking board takes besides the board.
    pub(crate) blocking_items: Vec<Item>,
}

impl Assembly {
    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }
}

/// Which way the post stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Axis {
    /// Square to the deck.
    #[default]
    Normal,
    /// Upright, so that it leans through the tile.
    Plumb,
}

/// The flashing on the deck, under or over the underlayment.
#[derive(Clone, Debug, PartialEq)]
pub struct DeckFlashing {
    /// Across the slope, `a`.
    pub(crate) width: Length,
    /// Down-slope of the post's point, `d`.
    pub(crate) down: Length,
    /// Up-slope of the post's point, `up`.
    pub(crate) up: Length,
    pub(crate) cone_diameter: Length,
    /// Top of the cone over the deck.
    pub(crate) cone_height: Option<Length>,
    pub(crate) dried_in: DriedIn,
}

/// How a deck flashing is dried in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DriedIn {
    /// Tucked under the sheet above, or patched where that can't be.
    #[default]
    Underlayment,
    /// Bands of roof cement, mesh and roof cement over the edges of the flange.
    ThreeCourse,
}

/// The flashing on the tile.
#[derive(Clone, Debug, PartialEq)]
pub struct TopFlashing {
    /// Across the slope before it is formed, `A`.
    pub(crate) width: Length,
    /// Down-slope of the opening's centre, `D`.
    pub(crate) down: Length,
    /// Up-slope of the opening's centre, `T`.
    pub(crate) up: Length,
    /// Whether it is formed over the tile's profile and so covers less than its flat width.
    pub(crate) formed: bool,
}

/// A bead of sealant.
#[derive(Clone, Debug, PartialEq)]
pub struct Bead {
    pub(crate) place: BeadPlace,
    pub(crate) diameter: Length,
}

/// Where a bead runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum BeadPlace {
    /// A U under the deck flashing's flange, open at its lower edge.
    #[serde(rename = "deck flange")]
    DeckFlange,
    /// A ring round the post at its collar.
    #[serde(rename = "collar")]
    Collar,
}

/// Pilot holes filled with sealant.
#[derive(Clone, Debug, PartialEq)]
pub struct PilotHoles {
    pub(crate) count: u32,
    pub(crate) diameter: Length,
    pub(crate) depth: Length,
}

/// Dabs of sealant.
#[derive(Clone, Debug, PartialEq)]
pub struct Dabs {
    pub(crate) count: u32,
    /// Volume of one, mm³.
    pub(crate) volume_mm3: f64,
}

/// A thing counted by the piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    pub(crate) item: String,
    pub(crate) count: u32,
}
