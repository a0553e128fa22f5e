//! A point of a slope.
use crate::units::Length;

/// A point of a slope: `u` along the eave to the right, `v` up the slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SlopePoint {
    /// Along the eave, left to right as seen from outside, looking up the slope.
    pub u: Length,
    /// Up the slope, on the deck.
    pub v: Length,
}
