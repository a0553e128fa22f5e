//! The patches of all jobs, cut from rolls together.
use super::{Ordered, problem};
use crate::model::{Code, Problems, Underlayment};
use crate::quantities::{PatchPiece, RollPlan, patch_pieces, roll_plan};

/// The cutting plans by underlayment, in the order in which the jobs name them; patches stand as `job/slope/patch`.
///
/// # Errors
///
/// Underlayments of one name that are not the same.
pub(super) fn plans(jobs: &[Ordered<'_>]) -> Result<Vec<RollPlan>, Problems> {
    let mut sheets: Vec<(&str, &Underlayment, Vec<PatchPiece>)> = Vec::new();
    let mut problems = Vec::new();
    for Ordered { job, takeoff } in jobs {
        for (slope, takeoff) in job.slopes.iter().zip(&takeoff.slopes) {
            let sheet = &*slope.underlayment;
            let pieces = patch_pieces(sheet, takeoff)
                .into_iter()
                .map(|piece| PatchPiece { patch: format!("{}/{}", job.name, piece.patch), ..piece });
            match sheets.iter_mut().find(|(_, known, _)| known.name == sheet.name) {
                Some((first, known, _)) if !alike(known, sheet) => {
                    let message = format!(
                        "the underlayment `{}` of `{}` is not that of `{first}`",
                        sheet.name, job.name
                    );
                    let help = "give underlayments of other sizes other names";
                    problems.push(problem(Code::UnderlaymentsDiffer, message, help));
                }
                Some((_, known, all)) => {
                    // A job that does not say how long a roll is takes the rolls of the others.
                    if known.roll_length.is_none() {
                        *known = sheet;
                    }
                    all.extend(pieces);
                }
                None => sheets.push((&job.name, sheet, pieces.collect())),
            }
        }
    }
    if !problems.is_empty() {
        problems.dedup();
        return Err(problems.into());
    }
    let plan = |(_, sheet, pieces): (_, &Underlayment, Vec<_>)| roll_plan(sheet, &pieces).ok().flatten();
    Ok(sheets.into_iter().filter_map(plan).collect())
}

/// Whether two underlayments may be cut from the same rolls, as far as the jobs say.
fn alike(one: &Underlayment, other: &Underlayment) -> bool {
    let rolls = one.roll_length.zip(other.roll_length);
    one.sheet_width == other.sheet_width
        && one.turnable == other.turnable
        && rolls.is_none_or(|(one, other)| one == other)
}
