//! A kind of piece that a tiled field is made of.
use std::borrow::Cow;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};

use crate::roof::{Part, part_name};

/// A kind of piece: a one-piece tile, or the pan or the cover of a two-piece tile. In JSON its name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Piece {
    /// Name of the tile.
    pub tile: String,
    /// Part of the tile.
    pub part: Part,
}

impl Piece {
    /// A part of a tile.
    pub fn new(tile: &str, part: Part) -> Piece {
        Piece { tile: tile.to_owned(), part }
    }
}

/// The tile's name, with `, pan` or `, cover` for a two-piece tile.
impl fmt::Display for Piece {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&part_name(&self.tile, self.part))
    }
}

impl Serialize for Piece {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl JsonSchema for Piece {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Piece".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        String::json_schema(generator)
    }
}
