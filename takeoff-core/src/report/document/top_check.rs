//! The flashing on the tile.
use schemars::JsonSchema;
use serde::Serialize;

use crate::deck::TopFlashingCheck;
use crate::geometry::to_mm;

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

impl From<&TopFlashingCheck> for TopCheck {
    fn from(check: &TopFlashingCheck) -> TopCheck {
        TopCheck {
            course: check.course.map(|k| u64::from(k) + 1),
            flashing_mm: check.lies.mm(),
            trimmed_mm: to_mm(check.trimmed),
            tuck_mm: check.tuck.map(to_mm),
            tuck_short_mm: to_mm(check.tuck_short),
            side_cover_mm: to_mm(check.side_cover),
            side_short_mm: to_mm(check.side_short),
            passes: check.passes(),
        }
    }
}
