//! Spare tiles for those that break while they are handled.
//!
//! Each tile handled breaks or not with the probability of its class, which the job states or follows from a crew's
//! record; the number of spares used is a random count whose distribution is exact.
//!
//! # How does a crew's record count?
//!
//! Every class then has a Beta rate, also a class without a record (its stated rate, weighed). A weight of 0 needs both
//! broken and whole tiles on record in every class. Rates of two jobs are one unknown rate where weight, stated rate and
//! record agree; else they are independent. Where the record says so little that the service level lies beyond a window
//! of 8 192 tiles, the takeoff is refused.
//!
//! # What is the least expected cost?
//!
//! It weighs the price of one tile (in packs, its share of the cheapest) against the cost of a tile short. Leftover tiles
//! are worth nothing. It stands beside the service level and changes no order. Replacements for tiles that can't be cut in
//! one piece are bought in any case. Tiles walked on are, of a two-piece tile, its covers.
mod need;
mod tile_least_cost;
mod tile_spares;

pub use need::{Alternative, Demand, Handled, Spares, expected, pooled, used};
pub use tile_least_cost::LeastCost;
pub use tile_spares::TileSpares;
pub(crate) use tile_spares::tile_spares;

#[cfg(test)]
mod tests;
