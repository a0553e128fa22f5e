//! The cost of an array over all of its shifts.
use schemars::JsonSchema;
use serde::Serialize;

use super::{EvaluatedShift, Search};
use crate::geometry::{Point, to_mm};

/// The additive cost of an array over its allowed shift, its rails and posts at their best for each.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ShiftMap {
    /// Shift to the right, ascending in equal steps; a single one where the job allows none along the eave.
    pub right_mm: Vec<f64>,
    /// Shift up the slope, ascending in equal steps; a single one where the job allows none.
    pub up_mm: Vec<f64>,
    /// One row per shift up, one column per shift to the right; `None` where no layout keeps all limits.
    pub cost: Vec<Vec<Option<f64>>>,
    /// Posts that fail or are in a narrow interval, in the same rows and columns.
    pub faults: Vec<Vec<u32>>,
}

/// Steps along the eave.
const ACROSS: i64 = 24;
/// Steps up the slope.
const UP: i64 = 48;

impl ShiftMap {
    /// The map, and the shifts of its grid that have a layout.
    pub(crate) fn of_search(search: &mut Search) -> (ShiftMap, Vec<EvaluatedShift>) {
        let origin = Point::from(search.array.at);
        let left_ends = steps(search.left, ACROSS);
        let shifts_up = steps(search.up, UP);
        let mut map = ShiftMap {
            right_mm: left_ends.iter().map(|left| to_mm(left - origin.u)).collect(),
            up_mm: shifts_up.iter().map(|&up| to_mm(up)).collect(),
            cost: Vec::with_capacity(shifts_up.len()),
            faults: Vec::with_capacity(shifts_up.len()),
        };
        let mut all = Vec::new();
        for &up in &shifts_up {
            let row: Vec<Option<EvaluatedShift>> =
                left_ends.iter().map(|&left| search.evaluate_best_phase(left, up)).collect();
            let objectives = || row.iter().map(|shift| shift.as_ref().map(|shift| shift.objective));
            map.cost.push(objectives().map(|objective| Some(objective?.amount())).collect());
            map.faults.push(objectives().map(|objective| objective.map_or(0, |at| at.faults())).collect());
            all.extend(row.into_iter().flatten());
        }
        (map, all)
    }
}

/// From one end of a range to the other in equal steps of whole nanometres; one place for an empty range.
fn steps((from, to): (i64, i64), most: i64) -> Vec<i64> {
    let length = to - from;
    let count = if length == 0 { 0 } else { most };
    (0..=count).map(|i| from + 2 * (length / 2 * i / count.max(1))).collect()
}
