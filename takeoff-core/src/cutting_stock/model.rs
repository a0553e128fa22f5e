//! Plain data of the problem and its answer: pieces and roll in, plan out.
use crate::units::Length;

/// A rectangular piece to cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Name, used in messages only.
    pub name: String,
    /// Side that lies along the roll.
    pub along: Length,
    /// Side that lies across the roll.
    pub across: Length,
    /// Whether the piece may be cut turned by 90°.
    pub turnable: bool,
}

/// The material that pieces are cut from: any number of equal rolls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RollStock {
    /// Width of a roll.
    pub width: Length,
    /// Length of a roll; `None` is one endless roll.
    pub roll_length: Option<Length>,
}

impl RollStock {
    /// Greatest length of a section, in nanometres.
    pub(super) fn max_section_length(&self) -> i64 {
        self.roll_length.map_or(i64::MAX, Length::nm)
    }
}

/// A rectangle on a roll, sides parallel to the roll's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rectangle {
    /// Distance from the start of the roll.
    pub start: Length,
    /// Distance from the edge of the roll.
    pub edge: Length,
    /// Size along the roll.
    pub length: Length,
    /// Size across the roll.
    pub width: Length,
}

/// A piece and the rectangle that it is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlacedPiece {
    /// Index of the piece in the list of pieces.
    pub piece: usize,
    /// The rectangle, exactly as large as the piece.
    pub rectangle: Rectangle,
    /// Whether the piece is cut turned by 90°.
    pub turned: bool,
}

/// The part of a roll between two cuts across its whole width.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// Distance from the start of the roll.
    pub start: Length,
    /// Size along the roll.
    pub length: Length,
    /// The pieces cut from the section.
    pub pieces: Vec<PlacedPiece>,
    /// The rest of the section, in rectangles.
    pub offcuts: Vec<Rectangle>,
}

/// A roll and its sections.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Roll {
    /// Sections from the start of the roll; beyond the last one the roll stays whole.
    pub sections: Vec<Section>,
}

impl Roll {
    /// Length cut off it.
    pub fn used(&self) -> Length {
        self.sections.iter().map(|section| section.length).sum()
    }
}

/// A cutting plan with its lower bounds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The rolls that are cut.
    pub rolls: Vec<Roll>,
    /// Total length of all sections.
    pub length_used: Length,
    /// Lower bound: no guillotine plan uses less length.
    pub length_bound: Length,
    /// Lower bound: no guillotine plan takes fewer rolls.
    pub rolls_bound: u64,
}

/// The pieces that do not fit on the roll in any permitted orientation, by their index in the list of pieces.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OversizedPieces(pub Vec<usize>);
