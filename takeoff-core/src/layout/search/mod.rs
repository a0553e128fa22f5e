//! Best-first search over the shifts of an array, its rails' heights and their posts.
//!
//! At a given shift the rails are independent: the objective is the sum, over the rails, of the least over the heights in
//! the rail's clamp window. Between two heights of a rail's [`HeightTable`] the objective is concave, so that only those
//! heights and the ends of the window count. As the array moves up, the sum is concave between shifts that bring an end
//! of a window to such a height; as it moves along the eave, it is constant between shifts that bring an overhang to its
//! limit. The candidate shifts are these. Each first gets a bound from the table alone ([`bounds`]); exact evaluations
//! follow in the order of the bounds, until no bound is below the best objective found.
mod bounds;
mod shift_map;
mod sliding_minimum;

pub use shift_map::ShiftMap;

use std::collections::BTreeMap;

use crate::geometry::grid;
use crate::layout::objective::Objective;
use crate::layout::rail::{CheapestPath, HeightTable, Rail, least_objective};
use crate::model::{Array, Rails};

/// The search for the best shift of one array. Lengths are in grid steps.
pub(crate) struct Search<'a> {
    pub(crate) array: &'a Array,
    pub(crate) rails: Vec<Rail<'a>>,
    /// The range of the array's left end.
    pub(crate) left: (i64, i64),
    /// The length of its rails.
    pub(crate) length: i64,
    /// The range of its shift up the slope, below zero down.
    pub(crate) up: (i64, i64),
    /// By stagger phase, then by rail.
    tables: Vec<Vec<HeightTable>>,
    /// The cheapest posts at heights outside the tables, by stagger phase, rail and height.
    path_cache: BTreeMap<(usize, usize, i64), Vec<CheapestPath>>,
}

/// A shift of the array with its exact objective.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct EvaluatedShift {
    pub(crate) objective: Objective,
    pub(crate) stagger_phase: usize,
    /// The array's left end.
    pub(crate) left: i64,
    /// Its shift up the slope.
    pub(crate) up: i64,
    /// By rail, all heights of the least objective.
    pub(crate) heights: Vec<Vec<i64>>,
}

/// Shifts of equal objective that are compared by their margins, at most.
const MOST_EQUALS: usize = 64;

impl<'a> Search<'a> {
    pub(crate) fn new(array: &'a Array, setup: &'a Rails, rails: Vec<Rail<'a>>) -> Search<'a> {
        let (bounds, shift) = (array.bounds(), &array.shift);
        let left = (bounds.left - grid(shift.left), bounds.left + grid(shift.right));
        let length = bounds.right - bounds.left;
        let of_phase = |stagger_phase: usize| {
            rails.iter().map(|rail| HeightTable::new(rail, stagger_phase, left, length)).collect()
        };
        let tables = (0..setup.stagger.max(1) as usize).map(of_phase).collect();
        let up = (-grid(shift.down), grid(shift.up));
        Search { array, rails, left, length, up, tables, path_cache: BTreeMap::new() }
    }

    /// The shifts of the least objective, [`MOST_EQUALS`] at most. Empty if no shift keeps all limits.
    pub(crate) fn best(&mut self) -> Vec<EvaluatedShift> {
        let mut best: Vec<EvaluatedShift> = Vec::new();
        for (bound, stagger_phase, left, up) in self.bounds() {
            if let Some(least) = best.first().map(|shift| shift.objective)
                && (bound > least || (bound == least && best.len() >= MOST_EQUALS))
            {
                break;
            }
            let Some(shift) = self.evaluate(stagger_phase, left, up) else { continue };
            match best.first().map(|best| shift.objective.cmp(&best.objective)) {
                Some(std::cmp::Ordering::Greater) => {}
                Some(std::cmp::Ordering::Equal) => best.push(shift),
                Some(std::cmp::Ordering::Less) | None => best = vec![shift],
            }
        }
        best
    }

    /// The least objective with the array's left end at `left`, shifted up by `up`, and the heights that attain it;
    /// `None` if no layout keeps all limits there.
    fn evaluate(&mut self, stagger_phase: usize, left: i64, up: i64) -> Option<EvaluatedShift> {
        let mut objective = Objective::default();
        let mut heights = Vec::with_capacity(self.rails.len());
        for rail in 0..self.rails.len() {
            let (low, high) = self.window(rail, up)?;
            let table = &self.tables[stagger_phase][rail];
            let first = table.heights.partition_point(|&v| v < low);
            let after = table.heights.partition_point(|&v| v <= high);
            let least = |paths: &[CheapestPath], v: i64| {
                least_objective(&self.rails[rail], paths, left, self.length, v)
            };
            let inside = (first..after).map(|place| (table.heights[place], &table.at[place]));
            let mut evaluated: Vec<(Objective, i64)> =
                inside.filter_map(|(v, paths)| Some((least(paths, v)?, v))).collect();
            for v in [low, high] {
                let paths = self.paths_at(stagger_phase, rail, v);
                let objective = least_objective(&self.rails[rail], &paths, left, self.length, v);
                evaluated.extend(objective.map(|objective| (objective, v)));
            }
            let best = evaluated.iter().map(|(objective, _)| *objective).min()?;
            objective = objective + best;
            let is_best = |(objective, v): (Objective, i64)| (objective == best).then_some(v);
            let mut equal: Vec<i64> = evaluated.into_iter().filter_map(is_best).collect();
            equal.sort_unstable();
            equal.dedup();
            heights.push(equal);
        }
        Some(EvaluatedShift { objective, stagger_phase, left, up, heights })
    }

    /// [`Search::evaluate`] in the best stagger phase.
    pub(crate) fn evaluate_best_phase(&mut self, left: i64, up: i64) -> Option<EvaluatedShift> {
        let phases = 0..self.tables.len();
        phases.filter_map(|phase| self.evaluate(phase, left, up)).min_by_key(|shift| shift.objective)
    }

    /// The cheapest posts of a rail at a height.
    pub(crate) fn paths_at(&mut self, stagger_phase: usize, rail: usize, v: i64) -> Vec<CheapestPath> {
        let Search { rails, tables, path_cache, left, length, .. } = self;
        let table = &tables[stagger_phase][rail];
        if let Ok(place) = table.heights.binary_search(&v) {
            return table.at[place].clone();
        }
        let rail_at = || {
            let candidates = rails[rail].candidates_at(v, stagger_phase);
            rails[rail].cheapest_paths(&candidates, v, *left, *length)
        };
        path_cache.entry((stagger_phase, rail, v)).or_insert_with(rail_at).clone()
    }

    /// The heights of a rail with the array shifted up by `up`, from tape graduation to tape graduation.
    fn window(&self, rail: usize, up: i64) -> Option<(i64, i64)> {
        let rail = &self.rails[rail];
        let (low, high) = ((rail.from + up).max(rail.low), (rail.to + up).min(rail.high));
        (low <= high).then(|| rail.model.graduations.within((low, high)))
    }
}
