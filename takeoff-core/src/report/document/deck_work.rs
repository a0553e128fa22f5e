//! The work on the deck at one post.
use schemars::JsonSchema;
use serde::Serialize;

use crate::deck::{self, DeckMethod, Method, PatchId};
use crate::geometry::to_mm;

/// The work on the deck at one post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct DeckWork {
    /// Tucked, patched or three-course.
    pub method: DeckMethod,
    /// The lap line that governs; `None` when there is none above and the patch runs to the field's edge, and with
    /// three-course work.
    pub lap_line_mm: Option<f64>,
    /// Whether the tucked sheet is also cut around the cone.
    pub cut_around_cone: bool,
    /// The patch's name.
    pub patch: Option<String>,
    /// The flashing: left, lower, right, upper.
    pub flashing_mm: [f64; 4],
    /// The work zone: left, lower, right, upper.
    pub zone_mm: [f64; 4],
}

impl From<&deck::DeckWork> for DeckWork {
    fn from(work: &deck::DeckWork) -> DeckWork {
        DeckWork {
            method: work.method.kind(),
            lap_line_mm: work.method.line().map(to_mm),
            cut_around_cone: matches!(work.method, Method::Tucked { around_cone: true, .. }),
            patch: work.patch.as_ref().map(PatchId::to_string),
            flashing_mm: work.flashing.mm(),
            zone_mm: work.zone.mm(),
        }
    }
}
