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
use crate::layout::objective::Score;
use crate::layout::rail::Best;
use crate::layout::rail::Rail;
use crate::layout::rail::{Heights, least};
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
    heights: Vec<Vec<Heights>>,
    /// The cheapest posts at heights that are no places.
    looked_at: BTreeMap<(usize, usize, i64), Vec<Best>>,
}

/// A place of the array with the heights of its rails.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Found {
    pub(crate) score: Score,
    pub(crate) phase: usize,
    /// Where the array's left end is.
    pub(crate) left: i64,
    /// How far up it is moved.
    pub(crate) up: i64,
    /// Of each rail, all heights of the least score.
    pub(crate) heights: Vec<Vec<i64>>,
}

/// A shift, by the bound on its score.
type Bound = (Score, usize, i64, i64);

/// How many shifts of equal score are compared by their margins.
const MOST_EQUALS: usize = 64;

impl<'a> Search<'a> {
    pub(crate) fn new(array: &'a Array, setup: &'a Rails, rails: Vec<Rail<'a>>) -> Search<'a> {
        let (bounds, shift) = (array.bounds(), &array.shift);
        let left = (bounds.left - grid(shift.left), bounds.left + grid(shift.right));
        let long = bounds.right - bounds.left;
        let turns = 0..setup.stagger.max(1) as usize;
        let heights = turns
            .map(|phase| rails.iter().map(|rail| Heights::of(rail, phase, left, long)).collect())
            .collect();
        let up = (-grid(shift.down), grid(shift.up));
        Search { array, rails, left, long, up, heights, looked_at: BTreeMap::new() }
    }

    /// The best places of the array, a number of them at most: all of the least score, and then maybe others. Empty where
    /// no place keeps to the constraints.
    pub(crate) fn best(&mut self) -> Vec<Found> {
        let mut found: Vec<Found> = Vec::new();
        let mut best: Option<(Score, usize)> = None;
        for (bound, phase, left, up) in self.bounds() {
            if best.is_some_and(|(least, equals)| bound > least || (bound == least && equals >= MOST_EQUALS))
            {
                break;
            }
            let Some(other) = self.at(phase, left, up) else { continue };
            best = match best {
                Some((least, equals)) if other.score == least => Some((least, equals + 1)),
                Some((least, _)) if other.score > least => best,
                _ => Some((other.score, 1)),
            };
            found.push(other);
        }
        found.sort_by_key(|found| found.score);
        found
    }

    /// The least score with the array's left end at `left`, moved up by `up`, and the heights that have it.
    pub(crate) fn at(&mut self, phase: usize, left: i64, up: i64) -> Option<Found> {
        let mut score = Score::default();
        let mut heights = Vec::with_capacity(self.rails.len());
        for rail in 0..self.rails.len() {
            let (low, high) = self.window(rail, up)?;
            let places = &self.heights[phase][rail].places;
            let (first, after) =
                (places.partition_point(|&v| v < low), places.partition_point(|&v| v <= high));
            let mut scored: Vec<(Score, i64)> = Vec::new();
            for place in first..after {
                let v = self.heights[phase][rail].places[place];
                let at = &self.heights[phase][rail].at[place];
                scored.extend(least(&self.rails[rail], at, left, self.long, v).map(|score| (score, v)));
            }
            for v in [low, high] {
                let at = self.at_height(phase, rail, v);
                scored.extend(least(&self.rails[rail], &at, left, self.long, v).map(|score| (score, v)));
            }
            let best = scored.iter().map(|(score, _)| *score).min()?;
            score = score + best;
            let mut equal: Vec<i64> =
                scored.into_iter().filter(|(score, _)| *score == best).map(|(_, v)| v).collect();
            equal.sort_unstable();
            equal.dedup();
            heights.push(equal);
        }
        Some(Found { score, phase, left, up, heights })
    }

    /// The same in the turn of the rafters that is best there.
    pub(crate) fn in_any_turn(&mut self, left: i64, up: i64) -> Option<Found> {
        let turns = 0..self.heights.len();
        turns.filter_map(|phase| self.at(phase, left, up)).min_by_key(|found| found.score)
    }

    /// The cheapest posts of a rail at a height.
    pub(crate) fn at_height(&mut self, phase: usize, rail: usize, v: i64) -> Vec<Best> {
        let Search { rails, heights, looked_at, left, long, .. } = self;
        let of_rail = &heights[phase][rail];
        if let Ok(place) = of_rail.places.binary_search(&v) {
            return of_rail.at[place].clone();
        }
        let look = || rails[rail].best(&rails[rail].standing(v, phase), v, *left, *long);
        looked_at.entry((phase, rail, v)).or_insert_with(look).clone()
    }

    /// From where to where a rail may be with the array moved up: from mark to mark.
    pub(crate) fn window(&self, rail: usize, up: i64) -> Option<(i64, i64)> {
        let rail = &self.rails[rail];
        let (low, high) = ((rail.from + up).max(rail.low), (rail.to + up).min(rail.high));
        (low <= high).then(|| rail.trial.marks.within((low, high)))
    }

    /// Every shift that may be best, the least bound first; equal ones from the lowest and leftmost on.
    fn bounds(&self) -> Vec<Bound> {
        let mut bounds = Vec::new();
        for phase in 0..self.heights.len() {
            let ups = self.ups(phase);
            for left in self.lefts(phase) {
                self.bounds_at(phase, left, &ups, &mut bounds);
            }
        }
        bounds.sort_unstable_by_key(|&(score, phase, left, up)| (score, up, left, phase));
        bounds
    }

    /// The left ends of the array at which some posts begin to carry a rail as it moves to the right.
    fn lefts(&self, phase: usize) -> Vec<i64> {
        let (from, to) = self.left;
        let mut lefts = vec![from];
        for (rail, heights) in self.rails.iter().zip(&self.heights[phase]) {
            let zones = &rail.rails.zones;
            let overhangs = zones.iter().map(|zone| zone.greatest_overhang);
            let overhangs: Vec<i64> = overhangs.chain([rail.rails.greatest_overhang]).map(grid).collect();
            for best in heights.at.iter().chain(&heights.between).flatten() {
                lefts.push(best.last - self.long);
                lefts.extend(overhangs.iter().map(|overhang| best.first - overhang));
            }
            lefts.extend(zones.iter().map(|zone| Point::from(zone.to).u + 2));
        }
        lefts.retain(|left| (from..=to).contains(left));
        lefts.sort_unstable();
        lefts.dedup();
        lefts
    }

    /// How far up the array is moved where an end of a rail's window comes to a place.
    fn ups(&self, phase: usize) -> Vec<i64> {
        let (down, up) = self.up;
        let mut ups = vec![down, up];
        for (rail, heights) in self.rails.iter().zip(&self.heights[phase]) {
            ups.extend(heights.places.iter().flat_map(|&v| [v - rail.from, v - rail.to]));
        }
        ups.retain(|by| (down..=up).contains(by));
        ups.sort_unstable();
        ups.dedup();
        ups
    }

    /// A bound for each way up, by the places in each rail's window and what lies between two of them at its ends.
    fn bounds_at(&self, phase: usize, left: i64, ups: &[i64], bounds: &mut Vec<Bound>) {
        let mut totals: Vec<Option<Score>> = vec![Some(Score::default()); ups.len()];
        for (number, heights) in self.heights[phase].iter().enumerate() {
            let rail = &self.rails[number];
            let places = &heights.places;
            let pick = |found: &Vec<Best>, v: i64| least(rail, found, left, self.long, v);
            let at: Vec<Option<Score>> = heights.at.iter().zip(places).map(|(at, &v)| pick(at, v)).collect();
            let between: Vec<Option<Score>> =
                heights.between.iter().zip(places).map(|(at, &v)| pick(at, v + 2)).collect();
            let mut lowest = Lowest::over(&at);
            let may_rise = rail.may_rise();
            for (total, &up) in totals.iter_mut().zip(ups) {
                let bound = self.window(number, up).and_then(|(low, high)| {
                    let first = places.partition_point(|&v| v < low);
                    let after = places.partition_point(|&v| v <= high);
                    let inside = lowest.within(first, after);
                    // The window's upper end, where it lies between two places, and, where money may rise, its lower.
                    let beyond = |after: usize| between.get(after.wrapping_sub(1)).copied().flatten();
                    let at_end = beyond(after).filter(|_| after == 0 || places[after - 1] < high);
                    let at_start = beyond(first).filter(|_| may_rise);
                    [inside, at_end, at_start].into_iter().flatten().min()
                });
                *total = total.zip(bound).map(|(total, bound)| total + bound);
            }
        }
        let scored = totals.into_iter().zip(ups);
        bounds.extend(scored.filter_map(|(total, &up)| total.map(|total| (total, phase, left, up))));
    }
}

/// The least of a stretch of a list, for stretches whose ends only move on: amortised constant.
struct Lowest<'a> {
    of: &'a [Option<Score>],
    /// Places still in the stretch, each lower than all after it.
    kept: VecDeque<usize>,
    reached: usize,
}

impl<'a> Lowest<'a> {
    fn over(of: &'a [Option<Score>]) -> Lowest<'a> {
        Lowest { of, kept: VecDeque::new(), reached: 0 }
    }

    /// Of the places from `first` up to `after`, that one left out.
    fn within(&mut self, first: usize, after: usize) -> Option<Score> {
        while self.reached < after {
            if let Some(score) = self.of[self.reached] {
                while self.kept.back().is_some_and(|&last| self.of[last].is_some_and(|last| last >= score)) {
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
