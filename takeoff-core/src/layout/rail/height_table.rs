//! The heights at which a rail is looked at, and its cheapest posts there.
use crate::geometry::grid;

use crate::layout::objective::Objective;
use crate::layout::rail::CheapestPath;
use crate::layout::rail::Rail;

/// A rail with its cheapest posts at every height that may be best, for one turn of the rafters.
pub(crate) struct HeightTable {
    /// Ascending: the ends of spans, and where a zone or a greatest span begins or ends to hold.
    pub(crate) places: Vec<i64>,
    /// At each place.
    pub(crate) at: Vec<Vec<CheapestPath>>,
    /// At the heights from each place to the next, both left out: not above what any of them costs.
    pub(crate) between: Vec<Vec<CheapestPath>>,
}

impl HeightTable {
    /// `ends` is how far left and right the rail's left end may be, `long` how long the rail is.
    pub(crate) fn of(rail: &Rail, stagger_phase: usize, ends: (i64, i64), long: i64) -> HeightTable {
        let places = places(rail);
        let at =
            places.iter().map(|&v| rail.best(&rail.candidates_at(v, stagger_phase), v, ends, long)).collect();
        let between = places.windows(2).map(|pair| {
            let (low, high) = (pair[0] + 2, pair[1] - 2);
            if low > high {
                return Vec::new();
            }
            rail.best(&rail.candidates_between(low, high, stagger_phase), low, ends, long)
        });
        let between = between.collect();
        HeightTable { places, at, between }
    }
}

/// The least of what carries the rail with its left end at `left`.
pub(crate) fn least(rail: &Rail, found: &[CheapestPath], left: i64, long: i64, v: i64) -> Option<Objective> {
    found.iter().filter(|best| rail.carries(best, left, long, v)).map(|best| best.objective).min()
}

fn places(rail: &Rail) -> Vec<i64> {
    let Rail { low, high, .. } = *rail;
    let spans = rail.lines.iter().flat_map(|line| line.spans.iter());
    let mut places: Vec<i64> = spans.flat_map(|span| [span.from, span.to]).collect();
    for zone in &rail.rails.zones {
        let (from, to) = (grid(zone.from.v), grid(zone.to.v));
        places.extend([from - 2, from, to, to + 2]);
    }
    places.extend(limit_crossings(rail));
    places.extend([low, high]);
    places.retain(|v| (low..=high).contains(v));
    places.sort_unstable();
    places.dedup();
    places
}

/// Where the way between two crooked rafters begins or ceases to be within a span or the least distance: the heights
/// on both sides.
fn limit_crossings(rail: &Rail) -> Vec<i64> {
    let Rail { rails, low, high, .. } = *rail;
    let zones = rails.zones.iter().map(|zone| grid(zone.greatest_span));
    let limits: Vec<i64> = zones.chain([grid(rails.greatest_span), grid(rails.least_distance) - 1]).collect();
    let most = limits.iter().copied().max().unwrap_or_default();
    let mut lines: Vec<usize> = (0..rail.lines.len()).collect();
    lines.sort_by_key(|&line| rail.u_at(line, low));
    let mut changes = Vec::new();
    for (place, &a) in lines.iter().enumerate() {
        for &b in &lines[place + 1..] {
            let way = |v: i64| rail.u_at(b, v) - rail.u_at(a, v);
            if way(low).min(way(high)) > most {
                break;
            }
            if !(rail.is_crooked(a) || rail.is_crooked(b)) {
                continue;
            }
            for &limit in &limits {
                let within = |v: i64| way(v) <= limit;
                if within(low) == within(high) {
                    continue;
                }
                let (mut same, mut other) = (low, high);
                while other - same > 2 {
                    let middle = 2 * ((same + other) / 2).div_euclid(2);
                    if within(middle) == within(low) { same = middle } else { other = middle }
                }
                changes.extend([same, other]);
            }
        }
    }
    changes
}
