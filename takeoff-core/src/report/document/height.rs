//! Heights over the deck.
use schemars::JsonSchema;
use serde::Serialize;

use crate::deck;
use crate::units::Length;

/// Heights over the deck at the post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct HeightStack {
    /// Top of the batten.
    pub batten_mm: f64,
    /// Layers of tile over the post's point.
    pub layers: u64,
    /// Top of the tile.
    pub tile_mm: f64,
    /// Top of the cone, if given.
    pub cone_mm: Option<f64>,
    /// Top of the post, if given.
    pub post_mm: Option<f64>,
    /// Free post above the tile, if given.
    pub free_post_mm: Option<f64>,
}

impl From<&deck::HeightStack> for HeightStack {
    fn from(stack: &deck::HeightStack) -> HeightStack {
        HeightStack {
            batten_mm: stack.batten.mm(),
            layers: stack.layers,
            tile_mm: stack.tile.mm(),
            cone_mm: stack.cone.map(Length::mm),
            post_mm: stack.post.map(Length::mm),
            free_post_mm: stack.free_post().map(Length::mm),
        }
    }
}
