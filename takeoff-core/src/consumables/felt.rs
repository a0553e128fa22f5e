//! Underlayment for patches, and the staples that hold them.
use std::collections::BTreeMap;

use crate::job::{Display, Job, Underlayment};
use crate::takeoff::{Basis, MaterialLine, Patch, SlopeTakeoff, Unit};
use crate::units::Length;

use super::needs::{Alike, Needs, line};
use super::whole_packs;

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
        needs.add(&patches_of(sheet), what, patch.area_mm2, places);
    }
    let mut lines = needs.into_lines();
    let rolls: Vec<MaterialLine> =
        sheets(job).filter_map(|sheet| rolls(job.display, sheet, &lines)).collect();
    lines.extend(rolls);
    lines
}

/// The underlayments in use, by name.
fn sheets(job: &Job) -> impl Iterator<Item = &Underlayment> {
    let by_name = job.slopes.iter().map(|slope| (slope.underlayment.name.as_str(), &*slope.underlayment));
    by_name.collect::<BTreeMap<_, _>>().into_values()
}

/// Whole rolls of a sheet by area alone, where the job gives a roll's length: what the patches take over what a roll
/// holds. A plan of the cuts may take more.
///
/// # Example
///
/// 22.1 sq ft of felt from rolls of 36 in × 72 ft, 216 sq ft each, is 0.102 of a roll: bring one.
fn rolls(display: Display, sheet: &Underlayment, felt: &[MaterialLine]) -> Option<MaterialLine> {
    let length = sheet.roll_length?;
    let patches = felt.iter().find(|line| line.item == patches_of(sheet))?;
    let roll_mm2 = sheet.sheet_width.mm() * length.mm();
    let need = patches.need / roll_mm2;
    let (width, long) = (display.length(sheet.sheet_width), display.length(length));
    let what =
        format!("the patches' felt from rolls of {width} × {long}, by area alone: cutting may take more");
    let basis = vec![Basis { what, count: 1, each: need, places: Vec::new() }];
    let line = line(format!("{}, rolls", sheet.name), Unit::Each, 0.0, basis);
    Some(MaterialLine { bring: whole_packs(need) as f64, packs_of: Some(patches_of(sheet)), ..line })
}

fn patches_of(sheet: &Underlayment) -> String {
    format!("{}, patches", sheet.name)
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
