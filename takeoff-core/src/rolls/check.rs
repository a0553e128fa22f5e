//! Checks a cutting plan against what was asked; shares nothing with the planner but what a plan is.
use crate::units::Length;

use super::{Cut, Piece, Place, Plan, Section, Sheet};

/// Whether a plan can be cut and gives every piece, in whole nanometres: pieces and offcuts fill their sections without
/// overlap and come apart by cuts from edge to edge; sections follow each other on the roll and are not longer than it;
/// every piece is cut once, in its size, turned only where it may be; and the numbers of the plan are those of its cuts.
///
/// # Errors
///
/// What is wrong first.
pub fn check(pieces: &[Piece], sheet: &Sheet, plan: &Plan) -> Result<(), String> {
    let mut times = vec![0; pieces.len()];
    let mut used = Length::ZERO;
    for roll in &plan.rolls {
        let mut end = Length::ZERO;
        for section in &roll.sections {
            if section.start != end {
                return Err(format!("a section begins at {:?}, not at {end:?}", section.start));
            }
            end = end + section.length;
            used = used + section.length;
            check_section(section, sheet)?;
            for cut in &section.cuts {
                check_cut(pieces, cut)?;
                times[cut.piece] += 1;
            }
        }
        if sheet.roll_length.is_some_and(|length| end > length) {
            return Err(format!("a roll is used up to {end:?}"));
        }
    }
    if let Some(piece) = times.iter().position(|&times| times != 1) {
        return Err(format!("`{}` is cut {} times", pieces[piece].name, times[piece]));
    }
    if used != plan.length_used || used < plan.length_bound {
        return Err(format!("{used:?} used, said {:?}, bound {:?}", plan.length_used, plan.length_bound));
    }
    if (plan.rolls.len() as u64) < plan.rolls_bound {
        return Err(format!("{} rolls, bound {}", plan.rolls.len(), plan.rolls_bound));
    }
    Ok(())
}

fn check_cut(pieces: &[Piece], cut: &Cut) -> Result<(), String> {
    let Some(piece) = pieces.get(cut.piece) else { return Err(format!("no piece {}", cut.piece)) };
    let size = if cut.turned { [piece.across, piece.along] } else { [piece.along, piece.across] };
    if [cut.place.length, cut.place.width] != size {
        return Err(format!("`{}` is cut as {:?}", piece.name, cut.place));
    }
    if cut.turned && !piece.turnable {
        return Err(format!("`{}` is turned", piece.name));
    }
    Ok(())
}

fn check_section(section: &Section, sheet: &Sheet) -> Result<(), String> {
    let parts: Vec<Box> =
        section.cuts.iter().map(|cut| &cut.place).chain(&section.offcuts).map(Box::of).collect();
    let whole =
        Box { from: [section.start.nm(), 0], to: [(section.start + section.length).nm(), sheet.width.nm()] };
    if let Some(part) = parts.iter().find(|part| !part.is_within(&whole)) {
        return Err(format!("{part:?} is not within its section {whole:?}"));
    }
    if parts.iter().map(Box::area).sum::<i128>() != whole.area() {
        return Err(format!("the parts of {whole:?} do not fill it"));
    }
    if comes_apart(parts) {
        Ok(())
    } else {
        Err(format!("{whole:?} does not come apart by cuts from edge to edge"))
    }
}

/// Whether cuts from edge to edge set all parts free; parts that overlap never come apart.
fn comes_apart(mut parts: Vec<Box>) -> bool {
    if parts.len() < 2 {
        return true;
    }
    for side in 0..2 {
        parts.sort_by_key(|part| part.from[side]);
        let mut reached = i64::MIN;
        for at in 0..parts.len() {
            if at > 0 && parts[at].from[side] >= reached {
                let beyond = parts.split_off(at);
                return comes_apart(parts) && comes_apart(beyond);
            }
            reached = reached.max(parts[at].to[side]);
        }
    }
    false
}

/// A rectangle by its corners.
#[derive(Clone, Debug)]
struct Box {
    from: [i64; 2],
    to: [i64; 2],
}

impl Box {
    fn of(place: &Place) -> Box {
        let to = [place.start + place.length, place.edge + place.width];
        Box { from: [place.start.nm(), place.edge.nm()], to: to.map(Length::nm) }
    }

    /// Whether it is a rectangle at all and lies within the other.
    fn is_within(&self, other: &Box) -> bool {
        (0..2).all(|side| {
            other.from[side] <= self.from[side]
                && self.from[side] < self.to[side]
                && self.to[side] <= other.to[side]
        })
    }

    fn area(&self) -> i128 {
        i128::from(self.to[0] - self.from[0]) * i128::from(self.to[1] - self.from[1])
    }
}
