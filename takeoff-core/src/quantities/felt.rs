//! Rolls of felt, by the cutting plan of the patches.
use super::{Basis, MaterialLine, RollPlan};
use crate::materials::Material;
use crate::model::Display;
use crate::units::Length;

/// The rolls that the cutting plan of an underlayment takes, where the job gives a roll's length: of the last one only
/// the length cut off it, so that waste comes out of its rest first.
///
/// # Example
///
/// Seven patches 18 to 20 in along, each more than half a sheet high, are cut one after the other: 128 in of a roll of
/// 864 in is 0.148 of it. Bring one.
pub(crate) fn felt_rolls(display: Display, plan: &RollPlan, waste: f64) -> Option<MaterialLine> {
    let RollPlan { sheet, plan, .. } = plan;
    let (length, last) = (sheet.roll_length?, plan.rolls.last()?.used());
    let shown = |length: Length| display.length(length);
    let (width, roll) = (shown(sheet.sheet_width), shown(length));
    let mut basis = Vec::new();
    let before = plan.rolls.len() as u64 - 1;
    if before > 0 {
        let what = format!("roll of {width} × {roll}, cut up as far as pieces fit");
        basis.push(Basis { what, count: before, each: 1.0, places: Vec::new() });
    }
    let what = format!(
        "{} off the last roll of {width} × {roll}; in all the plan takes {}, and no plan less than {}",
        shown(last),
        shown(plan.length_used),
        shown(plan.length_bound)
    );
    basis.push(Basis { what, count: 1, each: last.mm() / length.mm(), places: Vec::new() });
    Some(MaterialLine::new(Material::FeltRolls(sheet.name.clone()), waste, basis))
}
