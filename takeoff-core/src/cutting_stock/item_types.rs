//! Item types: pieces of one size, planned together.
use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::{Piece, RollStock};

/// Pieces of one size. All lengths of the planner are in nanometres.
#[derive(Clone, Debug)]
pub(super) struct ItemType {
    /// The permitted orientations that fit on the roll: one or two, in ascending order.
    pub(super) orientations: Vec<Orientation>,
}

/// A way to lay a piece on the roll.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Orientation {
    /// Size along the roll.
    pub(super) length: i64,
    /// Size across the roll.
    pub(super) width: i64,
    /// Whether the piece is turned by 90°.
    pub(super) turned: bool,
}

impl Orientation {
    pub(super) fn area(&self) -> i128 {
        i128::from(self.length) * i128::from(self.width)
    }
}

/// Number of pieces of each item type.
pub(super) type Demand = Vec<u64>;

/// The permitted orientations of a piece that fit on the roll, in ascending order.
pub(super) fn orientations(piece: &Piece, stock: &RollStock) -> Vec<Orientation> {
    let (along, across) = (piece.along.nm(), piece.across.nm());
    let straight = Orientation { length: along, width: across, turned: false };
    let turned = Orientation { length: across, width: along, turned: true };
    let mut orientations = vec![straight];
    if piece.turnable && along != across {
        orientations.push(turned);
    }
    let (max_length, max_width) = (stock.max_section_length(), stock.width.nm());
    orientations.retain(|&Orientation { length, width, .. }| {
        0 < length && length <= max_length && 0 < width && width <= max_width
    });
    orientations.sort_unstable();
    orientations
}

/// The item types of some pieces, longest first, and the indices of the pieces of each.
pub(super) fn item_types(pieces: &[Piece], stock: &RollStock) -> (Vec<ItemType>, Vec<Vec<usize>>) {
    let mut by_orientations: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    for (index, piece) in pieces.iter().enumerate() {
        by_orientations.entry(Reverse(orientations(piece, stock))).or_default().push(index);
    }
    by_orientations
        .into_iter()
        .map(|(Reverse(orientations), members)| (ItemType { orientations }, members))
        .unzip()
}

/// The number of pieces of each item type.
pub(super) fn demand(members: &[Vec<usize>]) -> Demand {
    members.iter().map(|members| members.len() as u64).collect()
}

/// Every orientation of every item type, with the index of its type.
pub(super) fn all_orientations(items: &[ItemType]) -> impl Iterator<Item = (usize, Orientation)> + '_ {
    let numbered = items.iter().enumerate();
    numbered.flat_map(|(item, of)| of.orientations.iter().map(move |&orientation| (item, orientation)))
}
