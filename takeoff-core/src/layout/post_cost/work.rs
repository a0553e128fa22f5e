//! The work of one post at a place.
use super::handled_tiles::HandledTiles;
use crate::relocation::{Situation, State};

/// The work of one post at a place: everything that its margin and its cost depend on, the height of its patch excepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct PostWork {
    pub(crate) state: State,
    /// Whether its cone or its top ends below the top of the tile.
    pub(super) too_low: bool,
    /// Tiles with a hole.
    pub(super) holes: u32,
    /// Tiles with a notch or a corner cut away.
    pub(super) notches: u32,
    pub(super) handled: HandledTiles,
    /// Pieces of batten cut out and reset.
    pub(super) battens: u32,
    /// `None` without a patch.
    pub(crate) patch: Option<PatchExtent>,
}

/// The part of a patch's extent that stays as its lower edge moves with the post.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct PatchExtent {
    /// Height of its upper edge; `None` where the patch runs up to the field's edge, whose height along a crooked rafter
    /// varies.
    pub(super) upper: Option<i64>,
    /// Pieces of sheet that make up its height.
    pub(super) pieces: u64,
}

impl PostWork {
    /// Whether there is tile over the place.
    pub(crate) fn meets_tile(&self) -> bool {
        self.state.situation != Situation::None
    }

    /// Whether the post severs a tile, or fails a check of its tile flashing or of its heights.
    pub(crate) fn fails(&self) -> bool {
        self.state.severed > 0 || !self.state.passes() || self.too_low
    }
}
