//! Materials: identity, name on the list, unit, and the quantity that a pack holds.
mod material;
mod piece;

pub use material::Material;
pub use piece::Piece;

#[cfg(test)]
mod tests;
