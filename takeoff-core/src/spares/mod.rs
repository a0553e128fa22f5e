//! Spare tiles for those that break while they are handled.
//!
//! Each tile handled breaks or not with the probability of its class, which the job states or follows from a crew's
//! record; the number of spares used is a random count whose distribution is exact.
mod need;
mod tile_least_cost;
mod tile_spares;

pub use need::{Alternative, Demand, Handled, Spares, expected, pooled, used};
pub use tile_least_cost::LeastCost;
pub use tile_spares::TileSpares;
pub(crate) use tile_spares::tile_spares;

#[cfg(test)]
mod tests;
