//! Underlayment and its lap lines.
use crate::units::Length;

/// A kind of underlayment, laid in sheets along the eave.
#[derive(Clone, Debug, PartialEq)]
pub struct Underlayment {
    pub(crate) name: String,
    /// Width of a sheet, `B`.
    pub(crate) sheet_width: Length,
    /// Lap of a sheet over the one below, `b`.
    pub(crate) head_lap: Length,
    pub(crate) roll_length: Option<Length>,
    /// Whether patches may be cut from it turned by 90°.
    pub(crate) turnable: bool,
    /// Stuck to the deck, or too old to bend: nothing is tucked under it.
    pub(crate) never_tucked: bool,
}

/// The lower edges of all sheets but the first.
#[derive(Clone, Debug, PartialEq)]
pub enum LapLines {
    /// `f0 + i·(B − b)`.
    Regular {
        /// `f0`.
        first: Length,
    },
    /// Measured, ascending.
    Measured(Vec<Length>),
}
