//! Totals that changed.
use schemars::JsonSchema;
use serde::Serialize;

use crate::quantities::Counts;

/// A total that changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CountChange {
    /// What is counted.
    pub what: String,
    /// As bid.
    pub bid: u64,
    /// As built.
    pub as_built: u64,
}

type Count = fn(&Counts) -> u64;

const COUNTS: [(&str, Count); 12] = [
    ("posts", |counts| counts.posts),
    ("tiles with a hole", |counts| counts.holes),
    ("tiles with a notch", |counts| counts.notches),
    ("tiles with a corner off", |counts| counts.corners),
    ("tiles severed", |counts| counts.severed),
    ("posts that cut more than one tile", |counts| counts.posts_on_several_tiles),
    ("flashings tucked", |counts| counts.tucked),
    ("flashings patched", |counts| counts.patched),
    ("felt patches", |counts| counts.patches),
    ("tiles taken up", |counts| counts.removed),
    ("tiles loosened", |counts| counts.loosened),
    ("tiles taken from under the arrays", |counts| counts.harvested),
];

/// The totals that are not the same in both.
pub(super) fn changes(bid: &Counts, as_built: &Counts) -> Vec<CountChange> {
    let all = COUNTS.iter().map(|(what, count)| CountChange {
        what: (*what).to_owned(),
        bid: count(bid),
        as_built: count(as_built),
    });
    all.filter(|change| change.bid != change.as_built).collect()
}
