//! Distributions of counts, exact: sums of binomial and negative binomial counts, with rates known or on record.
mod binomial;
mod distribution;
mod least_cost;
mod predictive;
mod rate;
mod window;

pub use distribution::{CountError, Distribution};
pub use least_cost::least_cost;
pub use rate::{Rate, Record, RecordError};

#[cfg(test)]
pub(crate) mod tests;
