//! Cost of one post by its place, and cost of a takeoff.
//!
//! Two formulations of the same rule. [`PostCostModel`] prices the work of one post from unit rates, fast enough for the
//! search. [`cost`](fn@cost) and [`additive`](fn@additive) price a takeoff, line by line. The tests hold one against the
//! other.
mod additive;
mod column_key;
mod cost;
mod handled_tiles;
mod model;
mod rates;
mod takeoff_cost;
mod work;

pub use additive::additive;
pub use cost::Cost;
pub use takeoff_cost::cost;
pub(crate) use takeoff_cost::no_costs;

pub(crate) use model::PostCostModel;
pub(crate) use work::{PatchExtent, PostWork};

#[cfg(test)]
pub(crate) use handled_tiles::{CutTile, TileCounter};
