//! Where an array and its rails go: the least score over its shifts, its rails' heights and their posts.
//!
//! For a shift the rails are apart from each other: the score is the sum, over the rails, of the least over the heights
//! in the rail's window. Between two of a rail's places it is concave in the height, so that only the places and the
//! window's ends count; and as the array moves up the sum is concave between the shifts that bring an end of a window
//! to a place. Those are the shifts that are looked at, with the ones that bring an overhang of a rail to its greatest
//! along the eave. First each gets a bound from the places alone; then they are scored in the order of the bounds,
//! until no bound is below what was found.
mod shift_map;

pub use shift_map::ShiftMap;

use std::collections::{BTreeMap, VecDeque};

use crate::geometry::{Point, grid};
use crate::layout::objective::Objective;
use crate::layout::rail::CheapestPath;
use crate::layout::rail::Rail;
use crate::layout::rail::{HeightTable, least};
use crate::model::{Array, Rails};

/// What is looked for: an array with the rails that a layout places.
pub(crate) struct Search<'a> {
    pub(crate) array: &'a Array,
    pub(crate) rails: Vec<Rail<'a>>,
    /// From where to where the left end of the array may be, how long its rails are, and how far down and up it goes.
    pub(crate) left: (i64, i64),
    pub(crate) long: i64,
    pub(crate) up: (i64, i64),
    /// For each turn of the rafters, the rails.
    heights: Vec<Vec<HeightTable>>,
    /// The cheapest posts at heights that are no places.
    path_cache: BTreeMap<(usize, usize, i64), Vec<CheapestPath>>,
}

/// A place of the array with the heights of its rails.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct ScoredShift {
    pub(crate) objective: Objective,
    pub(crate) stagger_phase: usize,
    /// Where the array's left end is.
    pub(crate) left: i64,
    /// How far up it is moved.
    pub(crate) up: i64,
    /// Of each rail, all heights of the least score.
    pub(crate) heights: Vec<Vec<i64>>,
}

/// A shift, by the bound on its score.
type ShiftBound = (Objective, usize, i64, i64);

/// How many shifts of equal score are compared by their margins.
const MOST_EQUALS: usize = 64;

impl<'a> Search<'a> {
    pub(crate) fn new(array: &'a Array, setup: &'a Rails, rails: Vec<Rail<'a>>) -> Search<'a> {
        let (bounds, shift) = (array.bounds(), &array.shift);
        let left = (bounds.left - grid(shift.left), bounds.left + grid(shift.right));
        let long = bounds.right - bounds.left;
        let phases = 0..setup.stagger.max(1) as usize;
        let heights = phases
            .map(|stagger_phase| {
                rails.iter().map(|rail| HeightTable::of(rail, stagger_phase, left, long)).collect()
            })
            .collect();
        let up = (-grid(shift.down), grid(shift.up));
        Search { array, rails, left, long, up, heights, path_cache: BTreeMap::new() }
    }

    /// The best places of the array, a number of them at most: all of the least score, and then maybe others. Empty where
    /// no place keeps to the constraints.
    pub(crate) fn best(&mut self) -> Vec<ScoredShift> {
        let mut found: Vec<ScoredShift> = Vec::new();
        let mut best: Option<(Objective, usize)> = None;
        for (bound, stagger_phase, left, up) in self.bounds() {
            if best.is_some_and(|(least, equals)| bound > least || (bound == least && equals >= MOST_EQUALS))
            {
                break;
            }
            let Some(other) = self.at(stagger_phase, left, up) else { continue };
            best = match best {
                Some((least, equals)) if other.objective == least => Some((least, equals + 1)),
                Some((least, _)) if other.objective > least => best,
                _ => Some((other.objective, 1)),
            };
            found.push(other);
        }
        found.sort_by_key(|found| found.objective);
        found
    }

    /// The least score with the array's left end at `left`, moved up by `up`, and the heights that have it.
    pub(crate) fn at(&mut self, stagger_phase: usize, left: i64, up: i64) -> Option<ScoredShift> {
        let mut objective = Objective::default();
        let mut heights = Vec::with_capacity(self.rails.len());
        for rail in 0..self.rails.len() {
            let (low, high) = self.window(rail, up)?;
            let places = &self.heights[stagger_phase][rail].places;
            let (first, after) =
                (places.partition_point(|&v| v < low), places.partition_point(|&v| v <= high));
            let mut evaluated: Vec<(Objective, i64)> = Vec::new();
            for place in first..after {
                let v = self.heights[stagger_phase][rail].places[place];
                let at = &self.heights[stagger_phase][rail].at[place];
                evaluated
                    .extend(least(&self.rails[rail], at, left, self.long, v).map(|objective| (objective, v)));
            }
            for v in [low, high] {
                let at = self.at_height(stagger_phase, rail, v);
                evaluated.extend(
                    least(&self.rails[rail], &at, left, self.long, v).map(|objective| (objective, v)),
                );
            }
            let best = evaluated.iter().map(|(objective, _)| *objective).min()?;
            objective = objective + best;
            let mut equal: Vec<i64> =
                evaluated.into_iter().filter(|(objective, _)| *objective == best).map(|(_, v)| v).collect();
            equal.sort_unstable();
            equal.dedup();
            heights.push(equal);
        }
        Some(ScoredShift { objective, stagger_phase, left, up, heights })
    }

    /// The same in the turn of the rafters that is best there.
    pub(crate) fn evaluate_best_phase(&mut self, left: i64, up: i64) -> Option<ScoredShift> {
        let phases = 0..self.heights.len();
        phases
            .filter_map(|stagger_phase| self.at(stagger_phase, left, up))
            .min_by_key(|found| found.objective)
    }

    /// The cheapest posts of a rail at a height.
    pub(crate) fn at_height(&mut self, stagger_phase: usize, rail: usize, v: i64) -> Vec<CheapestPath> {
        let Search { rails, heights, path_cache, left, long, .. } = self;
        let of_rail = &heights[stagger_phase][rail];
        if let Ok(place) = of_rail.places.binary_search(&v) {
            return of_rail.at[place].clone();
        }
        let look = || rails[rail].best(&rails[rail].candidates_at(v, stagger_phase), v, *left, *long);
        path_cache.entry((stagger_phase, rail, v)).or_insert_with(look).clone()
    }

    /// From where to where a rail may be with the array moved up: from mark to mark.
    pub(crate) fn window(&self, rail: usize, up: i64) -> Option<(i64, i64)> {
        let rail = &self.rails[rail];
        let (low, high) = ((rail.from + up).max(rail.low), (rail.to + up).min(rail.high));
        (low <= high).then(|| rail.model.graduations.within((low, high)))
    }

    /// Every shift that may be best, the least bound first; equal ones from the lowest and leftmost on.
    fn bounds(&self) -> Vec<ShiftBound> {
        let mut bounds = Vec::new();
        for stagger_phase in 0..self.heights.len() {
            let candidate_ups = self.candidate_ups(stagger_phase);
            for left in self.candidate_lefts(stagger_phase) {
                self.bounds_at(stagger_phase, left, &candidate_ups, &mut bounds);
            }
        }
        bounds.sort_unstable_by_key(|&(objective, stagger_phase, left, up)| {
            (objective, up, left, stagger_phase)
        });
        bounds
    }

    /// The left ends of the array at which some posts begin to carry a rail as it moves to the right.
    fn candidate_lefts(&self, stagger_phase: usize) -> Vec<i64> {
        let (from, to) = self.left;
        let mut candidate_lefts = vec![from];
        for (rail, heights) in self.rails.iter().zip(&self.heights[stagger_phase]) {
            let zones = &rail.rails.zones;
            let overhangs = zones.iter().map(|zone| zone.greatest_overhang);
            let overhangs: Vec<i64> = overhangs.chain([rail.rails.greatest_overhang]).map(grid).collect();
            for best in heights.at.iter().chain(&heights.between).flatten() {
                candidate_lefts.push(best.last - self.long);
                candidate_lefts.extend(overhangs.iter().map(|overhang| best.first - overhang));
            }
            candidate_lefts.extend(zones.iter().map(|zone| Point::from(zone.to).u + 2));
        }
        candidate_lefts.retain(|left| (from..=to).contains(left));
        candidate_lefts.sort_unstable();
        candidate_lefts.dedup();
        candidate_lefts
    }

    /// How far up the array is moved where an end of a rail's window comes to a place.
    fn candidate_ups(&self, stagger_phase: usize) -> Vec<i64> {
        let (down, up) = self.up;
        let mut candidate_ups = vec![down, up];
        for (rail, heights) in self.rails.iter().zip(&self.heights[stagger_phase]) {
            candidate_ups.extend(heights.places.iter().flat_map(|&v| [v - rail.from, v - rail.to]));
        }
        candidate_ups.retain(|by| (down..=up).contains(by));
        candidate_ups.sort_unstable();
        candidate_ups.dedup();
        candidate_ups
    }

    /// A bound for each way up, by the places in each rail's window and what lies between two of them at its ends.
    fn bounds_at(
        &self,
        stagger_phase: usize,
        left: i64,
        candidate_ups: &[i64],
        bounds: &mut Vec<ShiftBound>,
    ) {
        let mut totals: Vec<Option<Objective>> = vec![Some(Objective::default()); candidate_ups.len()];
        for (number, heights) in self.heights[stagger_phase].iter().enumerate() {
            let rail = &self.rails[number];
            let places = &heights.places;
            let pick = |found: &Vec<CheapestPath>, v: i64| least(rail, found, left, self.long, v);
            let at: Vec<Option<Objective>> =
                heights.at.iter().zip(places).map(|(at, &v)| pick(at, v)).collect();
            let between: Vec<Option<Objective>> =
                heights.between.iter().zip(places).map(|(at, &v)| pick(at, v + 2)).collect();
            let mut lowest = SlidingMinimum::over(&at);
            let cost_may_rise = rail.cost_may_rise();
            for (total, &up) in totals.iter_mut().zip(candidate_ups) {
                let bound = self.window(number, up).and_then(|(low, high)| {
                    let first = places.partition_point(|&v| v < low);
                    let after = places.partition_point(|&v| v <= high);
                    let inside = lowest.within(first, after);
                    // The window's upper end, where it lies between two places, and, where money may rise, its lower.
                    let beyond = |after: usize| between.get(after.wrapping_sub(1)).copied().flatten();
                    let at_end = beyond(after).filter(|_| after == 0 || places[after - 1] < high);
                    let at_start = beyond(first).filter(|_| cost_may_rise);
                    [inside, at_end, at_start].into_iter().flatten().min()
                });
                *total = total.zip(bound).map(|(total, bound)| total + bound);
            }
        }
        let evaluated = totals.into_iter().zip(candidate_ups);
        bounds
            .extend(evaluated.filter_map(|(total, &up)| total.map(|total| (total, stagger_phase, left, up))));
    }
}

/// The least of a stretch of a list, for stretches whose ends only move on: amortised constant.
struct SlidingMinimum<'a> {
    of: &'a [Option<Objective>],
    /// Places still in the stretch, each lower than all after it.
    kept: VecDeque<usize>,
    reached: usize,
}

impl<'a> SlidingMinimum<'a> {
    fn over(of: &'a [Option<Objective>]) -> SlidingMinimum<'a> {
        SlidingMinimum { of, kept: VecDeque::new(), reached: 0 }
    }

    /// Of the places from `first` up to `after`, that one left out.
    fn within(&mut self, first: usize, after: usize) -> Option<Objective> {
        while self.reached < after {
            if let Some(objective) = self.of[self.reached] {
                while self
                    .kept
                    .back()
                    .is_some_and(|&last| self.of[last].is_some_and(|last| last >= objective))
                {
                    self.kept.pop_back();
                }
                self.kept.push_back(self.reached);
            }
            self.reached += 1;
        }
        while self.kept.front().is_some_and(|&place| place < first) {
            self.kept.pop_front();
        }
        self.kept.front().and_then(|&place| self.of[place])
    }
}
