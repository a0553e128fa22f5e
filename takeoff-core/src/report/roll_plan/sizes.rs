//! The sizes of the pieces, each with a letter, so that drawing and legend name them alike.
use std::collections::BTreeMap;

use crate::report::document::{PieceCut, RollPlan};
use crate::units::{Length, RealLength};

/// A size with its letter and how many pieces have it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Size {
    /// `A`, `B`… then `A2`, `B2`…
    pub(super) letter: String,
    /// The side along the eave.
    pub(super) along_mm: f64,
    /// The side up the slope.
    pub(super) across_mm: f64,
    /// Pieces of this size.
    pub(super) count: u64,
}

/// The sizes of a plan: most pieces first, then larger ones.
pub(super) fn sizes(plan: &RollPlan) -> Vec<Size> {
    let mut counts: BTreeMap<[Length; 2], ([f64; 2], u64)> = BTreeMap::new();
    for piece in &plan.pieces {
        let sides = laid(piece);
        counts.entry(sides.map(|mm| RealLength::from_mm(mm).nearest())).or_insert((sides, 0)).1 += 1;
    }
    let mut sizes: Vec<([f64; 2], u64)> = counts.into_values().collect();
    sizes.sort_by(|(a, count), (b, more)| {
        more.cmp(count).then(b[0].total_cmp(&a[0])).then(b[1].total_cmp(&a[1]))
    });
    let named = sizes.into_iter().enumerate();
    named
        .map(|(number, ([along_mm, across_mm], count))| Size {
            letter: letter(number),
            along_mm,
            across_mm,
            count,
        })
        .collect()
}

/// The letter of a piece's size.
pub(super) fn letter_of<'s>(sizes: &'s [Size], piece: &PieceCut) -> &'s str {
    let sides = laid(piece);
    let same = |size: &&Size| [size.along_mm, size.across_mm] == sides;
    sizes.iter().find(same).map_or("", |size| &size.letter)
}

/// The sides of a piece as it is laid: along the eave, up the slope.
fn laid(piece: &PieceCut) -> [f64; 2] {
    if piece.turned { [piece.width_mm, piece.length_mm] } else { [piece.length_mm, piece.width_mm] }
}

fn letter(number: usize) -> String {
    let letter = char::from(b'A' + (number % 26) as u8);
    match number / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{}", round + 1),
    }
}
