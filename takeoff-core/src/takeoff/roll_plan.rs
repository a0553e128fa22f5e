//! From patches to the pieces they are laid in, and the cutting plan of those as a takeoff tells it.
use schemars::JsonSchema;
use serde::Serialize;

use super::SlopeTakeoff;
use crate::cutting_stock::{OversizedPieces, Piece, Plan, Rectangle, RollStock, plan};
use crate::job::Underlayment;
use crate::units::Length;

/// Lap of sheets end to end: 4 in (International Building Code 2018, 1507.1.1 and Table 1507.1.1(2)).
const END_LAP: Length = Length::from_nm(4 * Length::INCH.nm());

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

/// A piece of sheet that a patch is laid in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PatchPiece {
    /// The patch: `slope/patch`.
    pub patch: String,
    /// Which of the patch's pieces, from 1.
    pub piece: u64,
    /// In how many pieces the patch is laid.
    pub of: u64,
    /// The posts under the patch.
    pub posts: Vec<String>,
    /// Its side along the eave, which lies along the sheet.
    pub along: Length,
    /// Its side up the slope.
    pub across: Length,
}

/// The pieces that the patches of a slope are laid in.
///
/// # Rule
///
/// A patch taller than the sheet is wide is laid in full pieces with the sheet's head lap, the rest on top. One
/// longer than a roll, where turning it does not help, is joined end to end in the same way with laps of 4 in; full
/// pieces on the left.
///
/// # Example
///
/// A patch 18 × 47 in of felt 36 in wide that laps 2 in: 18 × 36 in, and 18 × 13 in over it.
pub fn patch_pieces(sheet: &Underlayment, slope: &SlopeTakeoff) -> Vec<PatchPiece> {
    let mut pieces = Vec::new();
    for patch in &slope.patches {
        let [left, lower, right, upper] = patch.bounds_mm;
        let [width, height] = [right - left, upper - lower].map(nearest);
        let heights = laid(height, Some(sheet.sheet_width), sheet.head_lap);
        let turns = |height: Length| {
            sheet.turnable
                && width <= sheet.sheet_width
                && sheet.roll_length.is_none_or(|roll| height <= roll)
        };
        let sizes: Vec<(Length, Length)> = heights
            .into_iter()
            .flat_map(|height| {
                let roll = if turns(height) { None } else { sheet.roll_length };
                laid(width, roll, END_LAP).into_iter().map(move |width| (width, height))
            })
            .collect();
        let of = sizes.len() as u64;
        for (piece, (along, across)) in (1..).zip(sizes) {
            let patch_name = format!("{}/{}", slope.name, patch.name);
            pieces.push(PatchPiece {
                patch: patch_name,
                piece,
                of,
                posts: patch.posts.clone(),
                along,
                across,
            });
        }
    }
    pieces
}

/// The lengths in which one is laid: whole stretches that lap, then the rest.
fn laid(length: Length, whole: Option<Length>, lap: Length) -> Vec<Length> {
    let Some(whole) = whole.filter(|&whole| lap < whole) else { return vec![length] };
    let mut left = length;
    let mut laid = Vec::new();
    while left > whole {
        laid.push(whole);
        left = left - whole + lap;
    }
    laid.push(left);
    laid
}

/// The cutting plan of these pieces; `None` where there are none.
///
/// Pieces may come from several slopes and several jobs: their patches are told apart by name.
///
/// # Errors
///
/// When the sheet is too small for some pieces: where, in the list.
pub fn roll_plan(sheet: &Underlayment, pieces: &[PatchPiece]) -> Result<Option<RollPlan>, OversizedPieces> {
    if pieces.is_empty() {
        return Ok(None);
    }
    let wanted: Vec<Piece> = pieces
        .iter()
        .map(|piece| Piece {
            name: format!("{}, {} of {}", piece.patch, piece.piece, piece.of),
            along: piece.along,
            across: piece.across,
            turnable: sheet.turnable,
        })
        .collect();
    let plan = plan(&wanted, &RollStock { width: sheet.sheet_width, roll_length: sheet.roll_length })?;
    Ok(Some(told(sheet, pieces, &plan)))
}

/// A plan as a takeoff tells it.
fn told(sheet: &Underlayment, pieces: &[PatchPiece], plan: &Plan) -> RollPlan {
    let (used, bound) = (plan.length_used.mm(), plan.length_bound.mm());
    let mut told = RollPlan {
        underlayment: sheet.name.clone(),
        sheet_width_mm: sheet.sheet_width.mm(),
        roll_length_mm: sheet.roll_length.map(Length::mm),
        turnable: sheet.turnable,
        length_used_mm: used,
        length_bound_mm: bound,
        gap: if bound > 0.0 { used / bound - 1.0 } else { 0.0 },
        rolls_bound: plan.rolls_bound,
        pieces_mm2: pieces.iter().map(|piece| piece.along.mm() * piece.across.mm()).sum(),
        offcuts_mm2: 0.0,
        rolls: Vec::new(),
        sections: Vec::new(),
        pieces: Vec::new(),
        offcuts: Vec::new(),
    };
    for (roll, sections) in (1..).zip(plan.rolls.iter().map(|roll| &roll.sections)) {
        let used: Length = sections.iter().map(|section| section.length).sum();
        let left = sheet.roll_length.map(|length| (length - used).mm());
        told.rolls.push(RollUse { roll, used_mm: used.mm(), left_mm: left });
        for (section, of) in (1..).zip(sections) {
            told.sections.push(RollSection {
                roll,
                section,
                start_mm: of.start.mm(),
                length_mm: of.length.mm(),
            });
            for placed in &of.pieces {
                let piece = &pieces[placed.piece];
                let [start_mm, edge_mm, length_mm, width_mm] = mm(&placed.rectangle);
                told.pieces.push(PieceCut {
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
                });
            }
            for offcut in &of.offcuts {
                let [start_mm, edge_mm, length_mm, width_mm] = mm(offcut);
                told.offcuts_mm2 += length_mm * width_mm;
                told.offcuts.push(Offcut { roll, section, start_mm, edge_mm, length_mm, width_mm });
            }
        }
    }
    told
}

fn mm(rectangle: &Rectangle) -> [f64; 4] {
    [rectangle.start, rectangle.edge, rectangle.length, rectangle.width].map(Length::mm)
}

fn nearest(mm: f64) -> Length {
    Length::nearest(mm * 1e6).unwrap_or(Length::LIMIT)
}
