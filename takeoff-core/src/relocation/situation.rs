//! What a post meets.
use schemars::JsonSchema;
use serde::Serialize;

/// What a post meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Situation {
    /// No tile there.
    None,
    /// One tile, with a hole.
    OneTileHole,
    /// One tile, at its edge.
    OneTileEdge,
    /// Two tiles of one course.
    TwoSideBySide,
    /// Two tiles of two courses.
    TwoCourses,
    /// Three tiles.
    Three,
    /// Four or more.
    FourOrMore,
}
