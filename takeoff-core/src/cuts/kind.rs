//! Kinds of cuts and sides of a tile.
use schemars::JsonSchema;
use serde::Serialize;

/// What kind of cut a tile gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CutKind {
    /// The opening, with sound tile all round.
    Hole,
    /// Out through one edge.
    Notch,
    /// Out through two edges that share a corner; the corner piece comes away.
    Corner,
    /// No sound single piece remains.
    Severed,
}

/// A side of a tile as laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TileSide {
    /// The left side.
    Left,
    /// The nose.
    Nose,
    /// The right side.
    Right,
    /// The head.
    Head,
    /// An edge cut along the field's edge (hip, valley, chimney…).
    FieldEdge,
}
