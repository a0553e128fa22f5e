//! Wear of saw blades.
use super::Basis;
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::RealLength;

/// Share of a blade that all cuts of a job wear out, where the job gives a blade's life: length of the saw cuts in
/// tile ÷ life.
///
/// # Example
///
/// 4.2 m of saw cut with blades that last 25 m: 0.168 of a blade.
pub(super) fn blades(job: &Job, slopes: &[SlopeTakeoff]) -> Option<Basis> {
    let life = job.practice.blade_life?;
    let path: RealLength = slopes.iter().flat_map(|slope| &slope.cuts).map(|cut| cut.blade_path).sum();
    let shown = job.display.length(path.nearest());
    let what = format!("{shown} cut in tile, a blade each {}", job.display.length(life));
    Some(Basis { what, count: 1, each: path.mm() / life.mm(), places: Vec::new() })
}
