//! The stable names of what the work on the deck finds odd.

pub(super) const BANDS_MEET: &str = "bands-meet";
pub(super) const CONE_DOES_NOT_CLEAR: &str = "cone-does-not-clear";
pub(super) const DECK_FLASHINGS_MEET: &str = "deck-flashings-meet";
pub(super) const NO_LAP_LINE_ABOVE: &str = "no-lap-line-above";
pub(super) const NO_RAFTER_BESIDE: &str = "no-rafter-beside";
pub(super) const POST_DOES_NOT_CLEAR: &str = "post-does-not-clear";
pub(super) const SET_TILES_CANNOT_BE_LOOSENED: &str = "set-tiles-cannot-be-loosened";

/// The code of every finding that the work on the deck can give.
pub const CODES: &[&str] = &[
    BANDS_MEET,
    CONE_DOES_NOT_CLEAR,
    DECK_FLASHINGS_MEET,
    NO_LAP_LINE_ABOVE,
    NO_RAFTER_BESIDE,
    POST_DOES_NOT_CLEAR,
    SET_TILES_CANNOT_BE_LOOSENED,
];
