//! A patch over deck flashings.
use schemars::JsonSchema;
use serde::Serialize;

use super::names::post_names;
use crate::deck::{self, PatchId};
use crate::slope_takeoff;
use crate::units::Length;

/// A patch over a deck flashing.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Patch {
    /// Its name.
    pub name: String,
    /// The posts under it.
    pub posts: Vec<String>,
    /// Left, lower, right, upper.
    pub bounds_mm: [f64; 4],
    /// The lap line it goes under; `None` runs to the field's edge.
    pub lap_line_mm: Option<f64>,
    /// Pieces, one above the other, where it is taller than a sheet is wide.
    pub pieces: u64,
    /// Felt it takes, the laps between its pieces counted.
    pub area_mm2: f64,
    /// Round about its edge.
    pub perimeter_mm: f64,
    /// Staples.
    pub staples: u64,
    /// Posts at its lower edge, cut half-round about the cone.
    pub half_round_at: Vec<String>,
    /// Posts inside it, with a full round hole.
    pub round_at: Vec<String>,
    /// Patches that this one lies over.
    pub lies_over: Vec<String>,
    /// Posts that are not under this patch and whose cones stand in it: it is cut round them.
    pub cut_round: Vec<String>,
}

impl Patch {
    /// A patch of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, id: PatchId, patch: &deck::Patch) -> Patch {
        Patch {
            name: id.to_string(),
            posts: post_names(slope, &patch.posts),
            bounds_mm: patch.bounds.mm(),
            lap_line_mm: patch.lap_line.map(Length::mm),
            pieces: patch.pieces,
            area_mm2: patch.area.mm2(),
            perimeter_mm: patch.perimeter().mm(),
            staples: patch.staples,
            half_round_at: post_names(slope, &patch.half_round_at),
            round_at: post_names(slope, &patch.round_at),
            lies_over: patch.lies_over.iter().map(PatchId::to_string).collect(),
            cut_round: post_names(slope, &patch.cut_round),
        }
    }
}
