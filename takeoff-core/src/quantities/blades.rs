//! Blades worn out on tile.
use super::needs::line;
use super::{Basis, MaterialLine, whole_packs};
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::{RealLength, Unit};

/// What the material list calls a blade.
pub(crate) const BLADE: &str = "saw blade";

/// Blades for all cuts, where the job says what one cuts: path of the blade through tile / life, up, once a job.
///
/// # Example
///
/// 4.2 m of path with blades that last 25 m: 0.168 of a blade, so bring one.
pub(super) fn blades(job: &Job, slopes: &[SlopeTakeoff]) -> Option<MaterialLine> {
    let life = job.practice.blade_life?;
    let path: RealLength = slopes.iter().flat_map(|slope| &slope.cuts).map(|cut| cut.blade_path).sum();
    let shown = job.display.length(path.nearest());
    let what = format!("{shown} cut in tile, a blade each {}", job.display.length(life));
    let basis = Basis { what, count: 1, each: path.mm() / life.mm(), places: Vec::new() };
    let line = line(BLADE.to_owned(), Unit::Each, 0.0, vec![basis]);
    Some(MaterialLine { bring: whole_packs(line.need) as f64, ..line })
}
