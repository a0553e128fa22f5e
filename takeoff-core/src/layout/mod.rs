//! Where the posts of arrays stand at the least cost.
mod cost;

#[cfg(test)]
mod tests;

pub use cost::{Cost, additive, cost};
