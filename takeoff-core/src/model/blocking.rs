//! Wood of blocking between rafters.
use crate::units::Length;

/// Blocking boards: what a lag finds in one.
#[derive(Clone, Debug, PartialEq)]
pub struct BlockingWood {
    /// The face below the deck, across the board.
    pub(crate) width: Length,
    /// Down from the deck.
    pub(crate) depth: Length,
    pub(crate) specific_gravity: f64,
}
