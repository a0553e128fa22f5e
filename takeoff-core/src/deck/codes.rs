//! Codes of the findings about the work on the deck.
use crate::model::Code;

pub(super) const BANDS_MEET: Code = Code::BandsMeet;
pub(super) const CONE_DOES_NOT_CLEAR: Code = Code::ConeDoesNotClear;
pub(super) const DECK_FLASHINGS_MEET: Code = Code::DeckFlashingsMeet;
pub(super) const NO_LAP_LINE_ABOVE: Code = Code::NoLapLineAbove;
pub(super) const NO_RAFTER_BESIDE: Code = Code::NoRafterBeside;
pub(super) const POST_DOES_NOT_CLEAR: Code = Code::PostDoesNotClear;
pub(super) const SET_TILES_CANNOT_BE_LOOSENED: Code = Code::SetTilesCannotBeLoosened;

/// The code of every finding that the work on the deck can give.
pub const CODES: &[Code] = &[
    BANDS_MEET,
    CONE_DOES_NOT_CLEAR,
    DECK_FLASHINGS_MEET,
    NO_LAP_LINE_ABOVE,
    NO_RAFTER_BESIDE,
    POST_DOES_NOT_CLEAR,
    SET_TILES_CANNOT_BE_LOOSENED,
];
