//! What an array costs over all of its shifts.
use schemars::JsonSchema;
use serde::Serialize;

use crate::geometry::{Point, to_mm};

use super::score::Score;
use super::search::Search;

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
    pub(super) fn of(search: &mut Search) -> ShiftMap {
        let own = Point::from(search.array.at);
        let lefts = steps(search.left, ACROSS);
        let ups = steps(search.up, UP);
        let phases = search.phases();
        let mut rows = Vec::with_capacity(ups.len());
        for &up in &ups {
            let mut row: Vec<Option<Score>> = Vec::with_capacity(lefts.len());
            for &left in &lefts {
                let scores =
                    (0..phases).filter_map(|phase| search.at(phase, left, up).map(|found| found.score));
                row.push(scores.min());
            }
            rows.push(row);
        }
        let of_row =
            |row: &Vec<Option<Score>>| row.iter().map(|score| score.map(|score| score.amount())).collect();
        let faults = |row: &Vec<Option<Score>>| {
            row.iter().map(|score| score.map_or(0, |score| score.failing + score.thin)).collect()
        };
        ShiftMap {
            right_mm: lefts.iter().map(|left| to_mm(left - own.u)).collect(),
            up_mm: ups.iter().map(|&up| to_mm(up)).collect(),
            cost: rows.iter().map(of_row).collect(),
            faults: rows.iter().map(faults).collect(),
        }
    }
}

/// From one end of a range to the other in equal steps of whole nanometres; one place where there is no way.
fn steps((from, to): (i64, i64), most: i64) -> Vec<i64> {
    let long = to - from;
    let count = if long == 0 { 0 } else { most };
    (0..=count).map(|i| from + 2 * (long / 2 * i / count.max(1))).collect()
}
