//! Tiles that break while they are handled, and the spares to have on the roof for them.
//!
//! Each tile handled breaks or not with the probability of its class, which the job states or a crew's record
//! teaches; the number of spares used is then a random count whose distribution is computed exactly.
mod distribution;
mod least_cost;
mod need;
mod predictive;
mod rate;
mod window;

pub use distribution::{CountError, Distribution};
pub use least_cost::least_cost;
pub use need::{Alternative, Breakage, Demand, Handled, Spares, expected, pooled, used};
pub use rate::{Rate, Record, RecordError};

#[cfg(test)]
mod tests;
