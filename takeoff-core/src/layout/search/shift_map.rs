//! What an array costs over all of its shifts.
use schemars::JsonSchema;
use serde::Serialize;

use crate::geometry::{Point, to_mm};

use crate::layout::search::{ScoredShift, Search};

/// The additive cost of an array over its allowed shift, its rails and posts at their best for each.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ShiftMap {
    /// How far the array is moved to the right, ascending, in equal steps; one place where it may not be moved so.
    pub right_mm: Vec<f64>,
    /// How far it is moved up, the same way.
    pub up_mm: Vec<f64>,
    /// A row a way up, a column a way to the right; `None` where the constraints leave no layout.
    pub cost: Vec<Vec<Option<f64>>>,
    /// The same: how many posts fail or stand in a thin interval.
    pub faults: Vec<Vec<u32>>,
}

/// As many columns and rows at most.
const ACROSS: i64 = 24;
const UP: i64 = 48;

impl ShiftMap {
    /// The map, and what was found at each of its places that has a layout.
    pub(crate) fn of(search: &mut Search) -> (ShiftMap, Vec<ScoredShift>) {
        let own = Point::from(search.array.at);
        let candidate_lefts = steps(search.left, ACROSS);
        let candidate_ups = steps(search.up, UP);
        let mut map = ShiftMap {
            right_mm: candidate_lefts.iter().map(|left| to_mm(left - own.u)).collect(),
            up_mm: candidate_ups.iter().map(|&up| to_mm(up)).collect(),
            cost: Vec::with_capacity(candidate_ups.len()),
            faults: Vec::with_capacity(candidate_ups.len()),
        };
        let mut all = Vec::new();
        for &up in &candidate_ups {
            let row: Vec<Option<ScoredShift>> =
                candidate_lefts.iter().map(|&left| search.evaluate_best_phase(left, up)).collect();
            let objective = |found: &Option<ScoredShift>| found.as_ref().map(|found| found.objective);
            map.cost
                .push(row.iter().map(|found| objective(found).map(|objective| objective.amount())).collect());
            let faults = |found| objective(found).map_or(0, |objective| objective.failing + objective.narrow);
            map.faults.push(row.iter().map(faults).collect());
            all.extend(row.into_iter().flatten());
        }
        (map, all)
    }
}

/// From one end of a range to the other in equal steps of whole nanometres; one place where there is no way.
fn steps((from, to): (i64, i64), most: i64) -> Vec<i64> {
    let long = to - from;
    let count = if long == 0 { 0 } else { most };
    (0..=count).map(|i| from + 2 * (long / 2 * i / count.max(1))).collect()
}
