//! Units of a material line.
use schemars::JsonSchema;
use serde::Serialize;

/// Unit of a material line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// By the piece.
    Each,
    /// Square millimetres.
    Mm2,
    /// Millimetres.
    Mm,
    /// Cubic millimetres.
    Mm3,
}
