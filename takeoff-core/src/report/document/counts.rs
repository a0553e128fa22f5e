//! The totals in one glance.
use schemars::JsonSchema;
use serde::Serialize;

use crate::quantities;
/// Totals over all slopes.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Counts {
    /// Posts.
    pub posts: u64,
    /// Tiles with a hole (an edge tile's piece counts as a tile).
    pub holes: u64,
    /// Tiles with a notch.
    pub notches: u64,
    /// Tiles with a corner cut away.
    pub corners: u64,
    /// Tiles severed.
    pub severed: u64,
    /// Posts that cut more than one tile.
    pub posts_on_several_tiles: u64,
    /// Posts whose flashing tucks under the sheet above.
    pub tucked: u64,
    /// Posts whose flashing is patched.
    pub patched: u64,
    /// Patches, linked ones counted once.
    pub patches: u64,
    /// Posts whose flashing is dried in with three-course work.
    pub three_course: u64,
    /// Tiles taken up (cut ones with them).
    pub removed: u64,
    /// Tiles loosened only.
    pub loosened: u64,
    /// Sound tiles taken from under the arrays, to be spares.
    pub harvested: u64,
    /// Blade path, in tile, millimetres.
    pub blade_path_mm: f64,
}

impl From<&quantities::Counts> for Counts {
    fn from(counts: &quantities::Counts) -> Counts {
        Counts {
            posts: counts.posts,
            holes: counts.holes,
            notches: counts.notches,
            corners: counts.corners,
            severed: counts.severed,
            posts_on_several_tiles: counts.posts_on_several_tiles,
            tucked: counts.tucked,
            patched: counts.patched,
            patches: counts.patches,
            three_course: counts.three_course,
            removed: counts.removed,
            loosened: counts.loosened,
            harvested: counts.harvested,
            blade_path_mm: counts.blade_path.mm(),
        }
    }
}
