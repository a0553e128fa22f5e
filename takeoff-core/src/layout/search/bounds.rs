//! Candidate shifts of an array, each with a bound on its objective.
use super::Search;
use super::sliding_minimum::SlidingMinimum;
use crate::geometry::{Point, grid};
use crate::layout::objective::Objective;
use crate::layout::rail::{CheapestPath, least_objective};

/// A bound on the objective of a shift, its stagger phase, the array's left end, and its shift up the slope.
type ShiftBound = (Objective, usize, i64, i64);

impl Search<'_> {
    /// Every shift that can be best, by ascending bound; equal bounds from the lowest and leftmost shift on.
    pub(super) fn bounds(&self) -> Vec<ShiftBound> {
        let mut bounds = Vec::new();
        for stagger_phase in 0..self.tables.len() {
            let shifts_up = self.shifts_up(stagger_phase);
            for left in self.left_ends(stagger_phase) {
                self.add_bounds(stagger_phase, left, &shifts_up, &mut bounds);
            }
        }
        bounds.sort_unstable_by_key(|&(objective, phase, left, up)| (objective, up, left, phase));
        bounds
    }

    /// The left ends of the array at which some posts begin to carry a rail as the array moves to the right.
    fn left_ends(&self, stagger_phase: usize) -> Vec<i64> {
        let (from, to) = self.left;
        let mut ends = vec![from];
        for (rail, table) in self.rails.iter().zip(&self.tables[stagger_phase]) {
            let zones = &rail.rails.zones;
            let overhangs = zones.iter().map(|zone| zone.greatest_overhang);
            let overhangs: Vec<i64> = overhangs.chain([rail.rails.greatest_overhang]).map(grid).collect();
            for path in table.at.iter().chain(&table.between).flatten() {
                ends.push(path.last - self.length);
                ends.extend(overhangs.iter().map(|overhang| path.first - overhang));
            }
            // One nanometre beyond a zone its overhang no longer applies.
            ends.extend(zones.iter().map(|zone| Point::from(zone.to).u + 2));
        }
        ends.retain(|left| (from..=to).contains(left));
        ends.sort_unstable();
        ends.dedup();
        ends
    }

    /// The shifts up the slope that bring an end of a rail's window to a height of its table.
    fn shifts_up(&self, stagger_phase: usize) -> Vec<i64> {
        let (down, up) = self.up;
        let mut shifts = vec![down, up];
        for (rail, table) in self.rails.iter().zip(&self.tables[stagger_phase]) {
            shifts.extend(table.heights.iter().flat_map(|&v| [v - rail.from, v - rail.to]));
        }
        shifts.retain(|by| (down..=up).contains(by));
        shifts.sort_unstable();
        shifts.dedup();
        shifts
    }

    /// Adds a bound for each shift up the slope, from the table's heights in each rail's window and from the bounds between
    /// two heights at the window's ends.
    fn add_bounds(&self, stagger_phase: usize, left: i64, shifts_up: &[i64], bounds: &mut Vec<ShiftBound>) {
        let mut totals: Vec<Option<Objective>> = vec![Some(Objective::default()); shifts_up.len()];
        for (number, table) in self.tables[stagger_phase].iter().enumerate() {
            let rail = &self.rails[number];
            let heights = &table.heights;
            let least =
                |paths: &Vec<CheapestPath>, v: i64| least_objective(rail, paths, left, self.length, v);
            let at: Vec<Option<Objective>> =
                table.at.iter().zip(heights).map(|(paths, &v)| least(paths, v)).collect();
            let between: Vec<Option<Objective>> =
                table.between.iter().zip(heights).map(|(paths, &v)| least(paths, v + 2)).collect();
            let mut minimum = SlidingMinimum::new(&at);
            let cost_may_rise = rail.cost_may_rise();
            for (total, &up) in totals.iter_mut().zip(shifts_up) {
                let bound = self.window(number, up).and_then(|(low, high)| {
                    let first = heights.partition_point(|&v| v < low);
                    let after = heights.partition_point(|&v| v <= high);
                    let inside = minimum.over(first, after);
                    // The window's upper end, where it is between two heights, and its lower end, if the cost may rise.
                    let before = |after: usize| between.get(after.wrapping_sub(1)).copied().flatten();
                    let at_end = before(after).filter(|_| after == 0 || heights[after - 1] < high);
                    let at_start = before(first).filter(|_| cost_may_rise);
                    [inside, at_end, at_start].into_iter().flatten().min()
                });
                *total = total.zip(bound).map(|(total, bound)| total + bound);
            }
        }
        let bounded = totals.into_iter().zip(shifts_up);
        bounds.extend(bounded.filter_map(|(total, &up)| total.map(|total| (total, stagger_phase, left, up))));
    }
}
