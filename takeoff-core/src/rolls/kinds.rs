//! Pieces of one size together.
use std::collections::BTreeMap;

use super::{Piece, Sheet};

/// Pieces of one size: the ways to cut one, each of which fits the sheet. Lengths in nanometres.
#[derive(Clone, Debug)]
pub(super) struct Kind {
    pub(super) ways: Vec<Way>,
}

/// A way to cut a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Way {
    /// Along the roll.
    pub(super) length: i64,
    /// Across the roll.
    pub(super) width: i64,
    /// Whether the piece is turned.
    pub(super) turned: bool,
}

/// How many pieces of each kind.
pub(super) type Counts = Vec<u64>;

/// The kinds of some pieces, longest first, and the pieces of each.
pub(super) fn kinds(pieces: &[Piece], sheet: &Sheet) -> (Vec<Kind>, Vec<Vec<usize>>) {
    let mut by_ways: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    for (at, piece) in pieces.iter().enumerate() {
        by_ways.entry(std::cmp::Reverse(sheet.ways(piece))).or_default().push(at);
    }
    by_ways.into_iter().map(|(ways, members)| (Kind { ways: ways.0 }, members)).unzip()
}

/// How many there are of each kind.
pub(super) fn counts(members: &[Vec<usize>]) -> Counts {
    members.iter().map(|members| members.len() as u64).collect()
}
