//! Underlayment for patches, and the staples that hold them.
use super::needs::{Alike, Needs, line};
use super::{Basis, MaterialLine, RollPlan, whole_packs};
use crate::deck::Patch;
use crate::model::{Display, Job, Underlayment};
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::{Length, Unit};

/// The felt of all patches, a line a kind of underlayment: patches of one size together; then the rolls it is cut from.
///
/// The laps between the pieces of a tall patch count; what is trimmed off at the field's edge does too.
pub(super) fn felt(job: &Job, slopes: &[SlopeTakeoff], plans: &[RollPlan]) -> Vec<MaterialLine> {
    let mut alike = Alike::new();
    for (slope, takeoff) in job.slopes.iter().zip(slopes) {
        for (id, patch) in takeoff.named_patches() {
            let size = (patch.area, patch.perimeter(), patch.width());
            let sheet = &*slope.underlayment;
            alike.add((sheet.name.as_str(), size), (sheet, patch), &slope.name, &id.to_string());
        }
    }
    let mut needs = Needs::new(Unit::Mm2);
    for ((sheet, patch), places) in alike.groups() {
        let mut what = format!("patch {}", size(patch, job.display));
        if patch.pieces > 1 {
            let lap = job.display.length(sheet.head_lap);
            what = format!("{what} in {} pieces that lap {lap}", patch.pieces);
        }
        needs.add(&patches_of(sheet), what, patch.area.mm2(), places);
    }
    let mut lines = needs.into_lines();
    lines.extend(plans.iter().filter_map(|plan| felt_rolls(job.display, plan)));
    lines
}

/// The rolls that the cutting plan of a sheet takes, where the job gives a roll's length: of the last one only what is
/// cut off it, so that waste comes out of its rest first.
///
/// # Example
///
/// Seven patches 18 to 20 in along, each more than half a sheet high, are cut one after the other: 128 in of a roll of
/// 864 in is 0.148 of it. Bring one.
pub(crate) fn felt_rolls(display: Display, plan: &RollPlan) -> Option<MaterialLine> {
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
    let line = line(format!("{}, rolls", sheet.name), Unit::Each, 0.0, basis);
    let packs_of = Some(patches_of(sheet));
    Some(MaterialLine { bring: whole_packs(line.need) as f64, packs_of, ..line })
}

fn patches_of(sheet: &Underlayment) -> String {
    format!("{}, patches", sheet.name)
}

/// Adds the staples of all patches: patches of one perimeter together.
pub(super) fn add_staples(job: &Job, slopes: &[SlopeTakeoff], needs: &mut Needs) {
    let mut alike = Alike::new();
    for slope in slopes {
        for (id, patch) in slope.named_patches() {
            alike.add(patch.perimeter(), patch, &slope.name, &id.to_string());
        }
    }
    let spacing = job.display.length(job.practice.staple_spacing);
    for (patch, places) in alike.groups() {
        let round = job.display.length(patch.perimeter());
        let what = format!("patch, {round} round about, a staple every {spacing}");
        needs.add("staple", what, patch.staples as f64, places);
    }
}

/// Width × height.
fn size(patch: &Patch, display: Display) -> String {
    let [width, height] = [patch.width(), patch.height()].map(|side| display.length(side));
    format!("{width} × {height}")
}
