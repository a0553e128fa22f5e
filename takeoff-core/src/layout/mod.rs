//! Where the posts of arrays stand at the least cost.
pub mod check;
mod cost;

#[cfg(test)]
mod tests;

pub use check::check;
pub use cost::{Cost, additive, cost};
