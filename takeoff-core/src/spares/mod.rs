//! Tiles that break while they are handled, and the spares to have on the roof for them.
//!
//! Each tile handled breaks or not, independently of the others, with the probability of its class;
//! the number of spares used is then a random count whose distribution is computed exactly.
mod distribution;
mod need;
pub use distribution::{CountError, Distribution};
pub use need::{Alternative, Breakage, Handled, Spares, Terms, spares, used};

#[cfg(test)]
mod tests;
