//! How the patches of one underlayment are cut from rolls.
use schemars::JsonSchema;
use serde::Serialize;

use crate::cutting_stock::{PlacedPiece, Rectangle};
use crate::quantities::{self, PatchPiece};
use crate::units::Length;
/// How the patches of one underlayment are cut from rolls.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RollPlan {
    /// The underlayment.
    pub underlayment: String,
    /// Width of the sheet.
    pub sheet_width_mm: f64,
    /// Length of a roll; `None` is one endless strip.
    pub roll_length_mm: Option<f64>,
    /// Whether pieces may be cut turned by 90°.
    pub turnable: bool,
    /// Length of all sections together: what is cut off the rolls.
    pub length_used_mm: f64,
    /// No plan uses less: proven, not estimated.
    pub length_bound_mm: f64,
    /// `length_used / length_bound − 1`.
    pub gap: f64,
    /// No plan takes fewer rolls.
    pub rolls_bound: u64,
    /// Area of all pieces.
    pub pieces_mm2: f64,
    /// Area of all offcuts.
    pub offcuts_mm2: f64,
    /// The rolls.
    pub rolls: Vec<RollUse>,
    /// The sections that cuts across the whole sheet part the rolls into, from the start of each roll.
    pub sections: Vec<RollSection>,
    /// The pieces, section by section.
    pub pieces: Vec<PieceCut>,
    /// What is left over of the sections.
    pub offcuts: Vec<Offcut>,
}

/// A roll.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RollUse {
    /// Its number, from 1.
    pub roll: u64,
    /// What is cut off it.
    pub used_mm: f64,
    /// What stays on it, whole; `None` for an endless strip.
    pub left_mm: Option<f64>,
}

/// A section of a roll.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RollSection {
    /// Its roll.
    pub roll: u64,
    /// Its number on the roll, from 1.
    pub section: u64,
    /// From the start of the roll.
    pub start_mm: f64,
    /// Along the roll.
    pub length_mm: f64,
}

/// A piece of a patch, where it is cut.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PieceCut {
    /// Its roll.
    pub roll: u64,
    /// Its section on the roll.
    pub section: u64,
    /// The patch: `slope/patch`.
    pub patch: String,
    /// Which of the patch's pieces, from 1: from its lower edge up, then from left to right.
    pub piece: u64,
    /// In how many pieces the patch is laid.
    pub of: u64,
    /// The posts under the patch.
    pub posts: Vec<String>,
    /// From the start of the roll.
    pub start_mm: f64,
    /// From the edge of the roll.
    pub edge_mm: f64,
    /// Along the roll.
    pub length_mm: f64,
    /// Across the roll.
    pub width_mm: f64,
    /// Whether it is cut turned by 90°.
    pub turned: bool,
}

/// What is left over of a section.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Offcut {
    /// Its roll.
    pub roll: u64,
    /// Its section on the roll.
    pub section: u64,
    /// From the start of the roll.
    pub start_mm: f64,
    /// From the edge of the roll.
    pub edge_mm: f64,
    /// Along the roll.
    pub length_mm: f64,
    /// Across the roll.
    pub width_mm: f64,
}

impl From<&quantities::RollPlan> for RollPlan {
    fn from(of: &quantities::RollPlan) -> RollPlan {
        let quantities::RollPlan { sheet, pieces, plan } = of;
        let mut document = RollPlan {
            underlayment: sheet.name.clone(),
            sheet_width_mm: sheet.sheet_width.mm(),
            roll_length_mm: sheet.roll_length.map(Length::mm),
            turnable: sheet.turnable,
            length_used_mm: plan.length_used.mm(),
            length_bound_mm: plan.length_bound.mm(),
            gap: of.gap(),
            rolls_bound: plan.rolls_bound,
            pieces_mm2: pieces.iter().map(|piece| piece.along.mm() * piece.across.mm()).sum(),
            offcuts_mm2: 0.0,
            rolls: Vec::new(),
            sections: Vec::new(),
            pieces: Vec::new(),
            offcuts: Vec::new(),
        };
        for (number, roll) in (1..).zip(&plan.rolls) {
            let left_mm = sheet.roll_length.map(|length| (length - roll.used()).mm());
            document.rolls.push(RollUse { roll: number, used_mm: roll.used().mm(), left_mm });
            for (section, of) in (1..).zip(&roll.sections) {
                document.sections.push(RollSection {
                    roll: number,
                    section,
                    start_mm: of.start.mm(),
                    length_mm: of.length.mm(),
                });
                let cut =
                    |placed: &PlacedPiece| PieceCut::new(number, section, &pieces[placed.piece], placed);
                document.pieces.extend(of.pieces.iter().map(cut));
                document
                    .offcuts
                    .extend(of.offcuts.iter().map(|rectangle| Offcut::new(number, section, rectangle)));
            }
        }
        document.offcuts_mm2 =
            document.offcuts.iter().fold(0.0, |sum, offcut| sum + offcut.length_mm * offcut.width_mm);
        document
    }
}

impl PieceCut {
    fn new(roll: u64, section: u64, piece: &PatchPiece, placed: &PlacedPiece) -> PieceCut {
        let [start_mm, edge_mm, length_mm, width_mm] = mm(&placed.rectangle);
        PieceCut {
            roll,
            section,
            patch: piece.patch.clone(),
            piece: piece.piece,
            of: piece.of,
            posts: piece.posts.clone(),
            start_mm,
            edge_mm,
            length_mm,
            width_mm,
            turned: placed.turned,
        }
    }
}

impl Offcut {
    fn new(roll: u64, section: u64, rectangle: &Rectangle) -> Offcut {
        let [start_mm, edge_mm, length_mm, width_mm] = mm(rectangle);
        Offcut { roll, section, start_mm, edge_mm, length_mm, width_mm }
    }
}

fn mm(rectangle: &Rectangle) -> [f64; 4] {
    [rectangle.start, rectangle.edge, rectangle.length, rectangle.width].map(Length::mm)
}
