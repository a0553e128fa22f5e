//! Breakage by class of tile.
use schemars::JsonSchema;
use serde::Serialize;

use crate::probability::Rate;

/// How often a tile breaks, by class. An assumption: every report prints it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Breakage {
    /// Of a tile that is cut; known, at least 0 and less than 1.
    pub cut: Rate,
    /// Of a tile that is taken up and laid back; known, from 0 to 1, like those below.
    pub removed: Rate,
    /// Of a tile that is loosened.
    pub loosened: Rate,
    /// Of a tile that is walked on.
    pub walked: Rate,
    /// Whether a spare for a cut tile is cut too and may break in its turn.
    pub recut: bool,
}
