//! The cost of one post by its place on the slope.
mod handled_tiles;
mod model;
mod rates;
mod takeoff_cost;

pub(crate) use model::*;
pub use takeoff_cost::{Cost, additive, cost};

#[cfg(test)]
pub(crate) use handled_tiles::{CutTile, TileCounter};
