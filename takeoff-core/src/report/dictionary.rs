//! Words for the kinds in a takeoff's document, for a face that renders the document itself.
use serde::{Serialize, Serializer};

use super::words;
use crate::cuts::TileSide;
use crate::relocation::Situation;

/// Words by key, in the order in which a face shows them.
#[derive(Serialize)]
pub(crate) struct Dictionary {
    /// Each `situation` of a post.
    situations: Words<Situation>,
    /// Each side that a cut is `open_to`.
    sides: Words<TileSide>,
    /// Each count of the document's `counts`.
    counts: Words<&'static str>,
}

/// A JSON object whose keys are serialised values.
struct Words<K>(Vec<(K, &'static str)>);

impl<K: Serialize> Serialize for Words<K> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(key, words)| (key, words)))
    }
}

/// Counts of the document, with the words for each. Lengths among them are left out.
const COUNTS: [(&str, &str); 13] = [
    ("posts", "posts"),
    ("holes", "tiles with a hole"),
    ("notches", "tiles with a notch"),
    ("corners", "tiles with a corner notch"),
    ("severed", "tiles that can't be cut in one piece"),
    ("posts_on_several_tiles", "posts that cut several tiles"),
    ("removed", "tiles removed and reset"),
    ("loosened", "tiles raised, not removed"),
    ("harvested", "tiles salvaged from under the arrays"),
    ("tucked", "flashings tucked"),
    ("patched", "flashings patched"),
    ("patches", "patches"),
    ("three_course", "flashings with three-course work"),
];

const SIDES: [TileSide; 5] =
    [TileSide::Left, TileSide::Nose, TileSide::Right, TileSide::Head, TileSide::FieldEdge];

/// The words of every kind.
pub(crate) fn dictionary() -> Dictionary {
    Dictionary {
        situations: Words(words::SITUATIONS.map(|key| (key, words::situation(key))).to_vec()),
        sides: Words(SIDES.map(|key| (key, words::tile_side(key))).to_vec()),
        counts: Words(COUNTS.to_vec()),
    }
}
