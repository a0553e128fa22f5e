//! Pieces of patches, and their cutting plan.
use crate::cutting_stock::{OversizedPieces, Piece, Plan, RollStock, plan};
use crate::model::Underlayment;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::Length;

/// Lap of sheets end to end: 4 in (International Building Code 2018, 1507.1.1 and Table 1507.1.1(2)).
const END_LAP: Length = Length::from_nm(4 * Length::INCH.nm());

/// How the patches of one underlayment are cut from rolls.
#[derive(Clone, Debug)]
pub struct RollPlan {
    /// The underlayment.
    pub sheet: Underlayment,
    /// The pieces that are cut.
    pub pieces: Vec<PatchPiece>,
    /// Where each of them is cut.
    pub plan: Plan,
}

impl RollPlan {
    /// `length used / length bound − 1`: how much less a better plan could take, at most.
    pub fn gap(&self) -> f64 {
        let (used, bound) = (self.plan.length_used.mm(), self.plan.length_bound.mm());
        if bound > 0.0 { used / bound - 1.0 } else { 0.0 }
    }
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
    for (id, patch) in slope.named_patches() {
        let (width, height) = (patch.width(), patch.height());
        let heights = stretches(height, Some(sheet.sheet_width), sheet.head_lap);
        let turns = |height: Length| {
            sheet.turnable
                && width <= sheet.sheet_width
                && sheet.roll_length.is_none_or(|roll| height <= roll)
        };
        let sizes: Vec<(Length, Length)> = heights
            .into_iter()
            .flat_map(|height| {
                let roll = if turns(height) { None } else { sheet.roll_length };
                stretches(width, roll, END_LAP).into_iter().map(move |width| (width, height))
            })
            .collect();
        let of = sizes.len() as u64;
        for (piece, (along, across)) in (1..).zip(sizes) {
            let posts = patch.posts.iter().map(|&post| slope.post_name(post).to_owned()).collect();
            let patch = format!("{}/{id}", slope.name);
            pieces.push(PatchPiece { patch, piece, of, posts, along, across });
        }
    }
    pieces
}

/// A length in lapping stretches: whole ones, then the rest.
fn stretches(length: Length, whole: Option<Length>, lap: Length) -> Vec<Length> {
    let Some(whole) = whole.filter(|&whole| lap < whole) else { return vec![length] };
    let mut left = length;
    let mut stretches = Vec::new();
    while left > whole {
        stretches.push(whole);
        left = left - whole + lap;
    }
    stretches.push(left);
    stretches
}

/// The cutting plan of these pieces; `None` where there are none.
///
/// Pieces may come from several slopes and several jobs; their patches differ by name.
///
/// # Errors
///
/// Places, in the list, of pieces that the sheet is too small for.
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
    Ok(Some(RollPlan { sheet: sheet.clone(), pieces: pieces.to_vec(), plan }))
}
