//! Underlayment for patches, and the staples that hold them.
use crate::job::{Display, Job};
use crate::takeoff::{MaterialLine, Patch, SlopeTakeoff, Unit};
use crate::units::Length;

use super::needs::{Alike, Needs};

/// The felt of all patches, a line a kind of underlayment: patches of one size together.
///
/// The laps between the pieces of a tall patch count; what is trimmed off at the field's edge does too.
pub(super) fn felt(job: &Job, slopes: &[SlopeTakeoff]) -> Vec<MaterialLine> {
    let mut alike = Alike::new();
    for (slope, takeoff) in job.slopes.iter().zip(slopes) {
        for patch in &takeoff.patches {
            let size = (patch.area_mm2.to_bits(), patch.perimeter_mm.to_bits(), patch.pieces);
            let sheet = &*slope.underlayment;
            alike.add((sheet.name.as_str(), size), (sheet, patch), &slope.name, &patch.name);
        }
    }
    let mut needs = Needs::new(Unit::Mm2);
    for ((sheet, patch), places) in alike.groups() {
        let mut what = format!("patch {}", size(patch, job.display));
        if patch.pieces > 1 {
            let lap = job.display.length(sheet.head_lap);
            what = format!("{what} in {} pieces that lap {lap}", patch.pieces);
        }
        needs.add(&format!("{}, patches", sheet.name), what, patch.area_mm2, places);
    }
    needs.into_lines()
}

/// Adds the staples of all patches: patches of one perimeter together.
pub(super) fn add_staples(job: &Job, slopes: &[SlopeTakeoff], needs: &mut Needs) {
    let mut alike = Alike::new();
    for slope in slopes {
        for patch in &slope.patches {
            alike.add((patch.perimeter_mm.to_bits(), patch.staples), patch, &slope.name, &patch.name);
        }
    }
    let spacing = job.display.length(job.practice.staple_spacing);
    for (patch, places) in alike.groups() {
        let round = job.display.length(nearest(patch.perimeter_mm));
        let what = format!("patch, {round} round about, a staple every {spacing}");
        needs.add("staple", what, patch.staples as f64, places);
    }
}

/// Width × height.
fn size(patch: &Patch, display: Display) -> String {
    let [left, lower, right, upper] = patch.bounds_mm;
    let [width, height] = [right - left, upper - lower].map(|side| display.length(nearest(side)));
    format!("{width} × {height}")
}

fn nearest(mm: f64) -> Length {
    Length::nearest(mm * 1e6).unwrap_or(Length::LIMIT)
}
