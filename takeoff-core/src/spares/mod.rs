//! Tiles that break while they are handled, and the spares to have on the roof for them.
//!
//! Each tile handled breaks or not with the probability of its class, which the job states or a crew's record
//! teaches; the number of spares used is then a random count whose distribution is computed exactly.
mod need;
mod tile_least_cost;
mod tile_spares;

pub use need::{Alternative, Demand, Handled, Spares, expected, pooled, used};
pub use tile_least_cost::LeastCost;
pub use tile_spares::TileSpares;
pub(crate) use tile_spares::tile_spares;

#[cfg(test)]
mod tests;
