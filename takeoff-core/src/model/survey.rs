//! Questions of a survey.
use schemars::JsonSchema;
use serde::Serialize;

/// A question that a survey should answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SurveyQuestion {
    /// Maker, age and kind of the tile.
    Tile,
    /// The roofer of record.
    RooferOfRecord,
    /// Warranties of roof and tile that stand.
    Warranties,
    /// Age, kind and state of the underlayment.
    Underlayment,
    /// Rafter size and spacing verified from inside.
    Rafters,
    /// Kind and thickness of the deck.
    Deck,
}
