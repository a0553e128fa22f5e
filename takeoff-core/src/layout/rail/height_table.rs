//! The heights of a rail that can be best, and its cheapest posts there.
use super::{CheapestPath, Rail};
use crate::geometry::grid;
use crate::layout::bisection::boundary;
use crate::layout::objective::Objective;

/// The cheapest posts of a rail at every height that can be best, for one stagger phase.
pub(crate) struct HeightTable {
    /// Ascending: the ends of intervals, and the heights at which a zone or a limit begins or ceases to apply.
    pub(crate) heights: Vec<i64>,
    /// The cheapest posts at each of them.
    pub(crate) at: Vec<Vec<CheapestPath>>,
    /// Bounds between each of them and the next, both excluded: the objective there is not below.
    pub(crate) between: Vec<Vec<CheapestPath>>,
}

impl HeightTable {
    /// `ends` is the range of the rail's left end, `length` the rail's length.
    pub(crate) fn new(rail: &Rail, stagger_phase: usize, ends: (i64, i64), length: i64) -> HeightTable {
        let heights = heights(rail);
        let at = |&v: &i64| rail.cheapest_paths(&rail.candidates_at(v, stagger_phase), v, ends, length);
        let between = |pair: &[i64]| {
            let (low, high) = (pair[0] + 2, pair[1] - 2);
            if low > high {
                return Vec::new();
            }
            rail.cheapest_paths(&rail.candidates_between(low, high, stagger_phase), low, ends, length)
        };
        let at = heights.iter().map(at).collect();
        let between = heights.windows(2).map(between).collect();
        HeightTable { heights, at, between }
    }
}

/// The least objective of the paths that carry the rail with its left end at `left`.
pub(crate) fn least_objective(
    rail: &Rail,
    paths: &[CheapestPath],
    left: i64,
    length: i64,
    v: i64,
) -> Option<Objective> {
    let carrying = paths.iter().filter(|path| rail.carries(path.first, path.last, left, length, v));
    carrying.map(|path| path.objective).min()
}

fn heights(rail: &Rail) -> Vec<i64> {
    let Rail { low, high, .. } = *rail;
    let intervals = rail.lines.iter().flat_map(|line| line.intervals.iter());
    let mut heights: Vec<i64> = intervals.flat_map(|interval| [interval.from, interval.to]).collect();
    for zone in &rail.rails.zones {
        let (from, to) = (grid(zone.from.v), grid(zone.to.v));
        heights.extend([from - 2, from, to, to + 2]);
    }
    heights.extend(limit_crossings(rail));
    heights.extend([low, high]);
    heights.retain(|v| (low..=high).contains(v));
    heights.sort_unstable();
    heights.dedup();
    heights
}

/// The heights at which the distance between two crooked rafters crosses a span limit or the least distance: the last one
/// before and the first one after each crossing.
fn limit_crossings(rail: &Rail) -> Vec<i64> {
    let Rail { rails, low, high, .. } = *rail;
    let zones = rails.zones.iter().map(|zone| grid(zone.greatest_span));
    let limits: Vec<i64> = zones.chain([grid(rails.greatest_span), grid(rails.least_distance) - 1]).collect();
    let most = limits.iter().copied().max().unwrap_or_default();
    let mut lines: Vec<usize> = (0..rail.lines.len()).collect();
    lines.sort_by_key(|&line| rail.u_at(line, low));
    let mut crossings = Vec::new();
    for (index, &a) in lines.iter().enumerate() {
        for &b in &lines[index + 1..] {
            let distance = |v: i64| rail.u_at(b, v) - rail.u_at(a, v);
            if distance(low).min(distance(high)) > most {
                break;
            }
            if !(rail.lines[a].is_crooked || rail.lines[b].is_crooked) {
                continue;
            }
            for &limit in &limits {
                let is_within = |v: i64| distance(v) <= limit;
                let at_low = is_within(low);
                if at_low != is_within(high) {
                    let (before, after) = boundary(low, high, |v| is_within(v) == at_low);
                    crossings.extend([before, after]);
                }
            }
        }
    }
    crossings
}
