//! The next best placements of an array.
use super::Placement;
use crate::layout::graduations::Graduations;
use crate::layout::search::{EvaluatedShift, Search};

/// Runners-up of an array in its layout.
const RUNNERS_UP: usize = 3;

/// The next best placements among shifts of an array, each of another objective, and with some post on another anchor or in
/// another interval than in all better ones.
pub(crate) fn runners_up(
    search: &mut Search,
    mut shifts: Vec<EvaluatedShift>,
    best: &Placement,
    graduations: Graduations,
) -> Vec<Placement> {
    shifts.sort_by_key(|shift| shift.objective);
    shifts.dedup_by_key(|shift| shift.objective);
    let mut runners_up: Vec<Placement> = Vec::new();
    for shift in shifts {
        let Some(other) = search.place_best(&[shift], graduations) else { continue };
        if runners_up.iter().chain([best]).all(|better| other.differs_from(better)) {
            runners_up.push(other);
            if runners_up.len() == RUNNERS_UP {
                break;
            }
        }
    }
    runners_up
}
