//! Cutting plans of a job, one per underlayment, and findings on them.
use std::collections::BTreeMap;

use super::{PatchPiece, RollPlan, patch_pieces, roll_plan};
use crate::model::{Code, Job, Problem, Underlayment};
use crate::slope_takeoff::SlopeTakeoff;

/// The plans by underlayment, and a finding for every patch that is longer than a roll.
pub(crate) fn cutting(job: &Job, slopes: &[SlopeTakeoff]) -> (Vec<RollPlan>, Vec<Problem>) {
    let mut by_underlayment: BTreeMap<&str, (&Underlayment, Vec<PatchPiece>)> = BTreeMap::new();
    let mut findings = Vec::new();
    for (place, (slope, takeoff)) in job.slopes.iter().zip(slopes).enumerate() {
        let sheet = &*slope.underlayment;
        let pieces = patch_pieces(sheet, takeoff);
        findings.extend(joined(job, place, sheet, takeoff, &pieces));
        by_underlayment.entry(&sheet.name).or_insert((sheet, Vec::new())).1.extend(pieces);
    }
    let plans =
        by_underlayment.into_values().filter_map(|(sheet, pieces)| roll_plan(sheet, &pieces).ok().flatten());
    (plans.collect(), findings)
}

/// Patches with more pieces than their height needs, or with a piece longer than a roll.
fn joined(
    job: &Job,
    place: usize,
    sheet: &Underlayment,
    slope: &SlopeTakeoff,
    pieces: &[PatchPiece],
) -> Vec<Problem> {
    let Some(roll) = sheet.roll_length else { return Vec::new() };
    let turns =
        |piece: &PatchPiece| sheet.turnable && piece.along <= sheet.sheet_width && piece.across <= roll;
    let longer = |pieces: &[PatchPiece]| pieces.iter().any(|piece| piece.along > roll && !turns(piece));
    let of_patches = slope.named_patches().zip(pieces.chunk_by(|a, b| a.patch == b.patch));
    of_patches
        .filter(|((_, patch), pieces)| pieces.len() as u64 > patch.pieces || longer(pieces))
        .map(|((name, patch), pieces)| {
            let (on, roll) = (&slope.name, job.display.length(roll));
            let message = format!("patch `{name}` on `{on}` is longer than a roll, {roll}");
            let help = if pieces.len() as u64 > patch.pieces {
                "take longer rolls, or join it end to end with laps of 4 in, as the cutting plan does"
            } else {
                "take longer rolls: there is no cutting plan for these"
            };
            Problem::new(Code::PatchLongerThanRoll, message, help, format!("/slopes/{place}"))
        })
        .collect()
}
