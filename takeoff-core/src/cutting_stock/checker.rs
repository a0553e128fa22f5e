//! Independent check of a cutting plan. It shares only the plain data with the planner and trusts nothing else from it.
use crate::units::Length;

use super::{Piece, PlacedPiece, Plan, Rectangle, RollStock, Section};

/// Checks in whole nanometres that a plan can be cut and gives every piece.
///
/// - Pieces and offcuts fill their section without overlap, and edge-to-edge cuts separate them.
/// - Sections follow one another on the roll and end within it.
/// - Every piece is cut once, in its size, and turned only if turnable.
/// - The plan's length is that of its sections, and neither length nor rolls are below their bounds.
///
/// # Errors
///
/// The first defect found.
pub fn check(pieces: &[Piece], stock: &RollStock, plan: &Plan) -> Result<(), String> {
    let mut times_cut = vec![0; pieces.len()];
    let mut used = Length::ZERO;
    for roll in &plan.rolls {
        let mut end = Length::ZERO;
        for section in &roll.sections {
            if section.start != end {
                return Err(format!("a section starts at {:?}, not at {end:?}", section.start));
            }
            end = end + section.length;
            used = used + section.length;
            check_section(section, stock)?;
            for placed in &section.pieces {
                check_piece(pieces, placed)?;
                times_cut[placed.piece] += 1;
            }
        }
        if stock.roll_length.is_some_and(|length| end > length) {
            return Err(format!("the sections of a roll end at {end:?}, beyond the roll"));
        }
    }
    if let Some(piece) = times_cut.iter().position(|&times| times != 1) {
        return Err(format!("`{}` is cut {} times", pieces[piece].name, times_cut[piece]));
    }
    if used != plan.length_used {
        return Err(format!("the sections use {used:?}, the plan states {:?}", plan.length_used));
    }
    if used < plan.length_bound {
        return Err(format!("{used:?} used is below the bound of {:?}", plan.length_bound));
    }
    if (plan.rolls.len() as u64) < plan.rolls_bound {
        return Err(format!("{} rolls are below the bound of {}", plan.rolls.len(), plan.rolls_bound));
    }
    Ok(())
}

fn check_piece(pieces: &[Piece], placed: &PlacedPiece) -> Result<(), String> {
    let Some(piece) = pieces.get(placed.piece) else {
        return Err(format!("piece {} is not in the list", placed.piece));
    };
    let size = if placed.turned { [piece.across, piece.along] } else { [piece.along, piece.across] };
    if [placed.rectangle.length, placed.rectangle.width] != size {
        return Err(format!("`{}` is cut as {:?}", piece.name, placed.rectangle));
    }
    if placed.turned && !piece.turnable {
        return Err(format!("`{}` is turned but not turnable", piece.name));
    }
    Ok(())
}

fn check_section(section: &Section, stock: &RollStock) -> Result<(), String> {
    let pieces = section.pieces.iter().map(|placed| &placed.rectangle);
    let parts: Vec<Corners> = pieces.chain(&section.offcuts).map(Corners::from_rectangle).collect();
    let end = section.start + section.length;
    let whole = Corners { low: [section.start.nm(), 0], high: [end.nm(), stock.width.nm()] };
    if let Some(part) = parts.iter().find(|part| !part.is_within(&whole)) {
        return Err(format!("{part:?} is not within its section {whole:?}"));
    }
    if parts.iter().map(Corners::area).sum::<i128>() != whole.area() {
        return Err(format!("the parts of {whole:?} do not fill it"));
    }
    if is_guillotine(parts) {
        Ok(())
    } else {
        Err(format!("edge-to-edge cuts do not separate the parts of {whole:?}"))
    }
}

/// Whether edge-to-edge cuts separate all parts; parts that overlap are never separated.
///
/// A cut lies where no part that starts before it ends beyond it. Any such cut can be made first: it splits no part, and
/// so it keeps every other cut possible.
fn is_guillotine(mut parts: Vec<Corners>) -> bool {
    if parts.len() < 2 {
        return true;
    }
    for axis in 0..2 {
        parts.sort_by_key(|part| part.low[axis]);
        let mut reached = i64::MIN;
        for index in 0..parts.len() {
            if index > 0 && parts[index].low[axis] >= reached {
                let beyond = parts.split_off(index);
                return is_guillotine(parts) && is_guillotine(beyond);
            }
            reached = reached.max(parts[index].high[axis]);
        }
    }
    false
}

/// A rectangle by its low and high corners, each along and across the roll.
#[derive(Clone, Debug)]
struct Corners {
    low: [i64; 2],
    high: [i64; 2],
}

impl Corners {
    fn from_rectangle(rectangle: &Rectangle) -> Corners {
        let high = [rectangle.start + rectangle.length, rectangle.edge + rectangle.width];
        Corners { low: [rectangle.start.nm(), rectangle.edge.nm()], high: high.map(Length::nm) }
    }

    /// Whether the rectangle has a positive area and lies within another.
    fn is_within(&self, outer: &Corners) -> bool {
        (0..2).all(|axis| {
            outer.low[axis] <= self.low[axis]
                && self.low[axis] < self.high[axis]
                && self.high[axis] <= outer.high[axis]
        })
    }

    fn area(&self) -> i128 {
        i128::from(self.high[0] - self.low[0]) * i128::from(self.high[1] - self.low[1])
    }
}
