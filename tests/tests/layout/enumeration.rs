//! Every place a sixteenth of an inch apart, tried one by one: the best layout among them.
use crate::place::{Places, Stand, Sum};
use crate::small::{Array, Given, Moved, SIXTEENTH, Small};

/// The best layout of an array among those tried.
pub(crate) struct Best {
    pub(crate) sum: Sum,
    /// To the right and up.
    pub(crate) moved: Moved,
    /// Name, `u` and `v` in nanometres.
    pub(crate) posts: Vec<(String, i64, i64)>,
}

/// A place on a rail.
#[derive(Clone, Copy)]
struct Spot {
    u: i64,
    /// `None` for a fixed post.
    stand: Option<Stand>,
    sum: Sum,
}

/// A rail at a height: its posts, and what they add up to.
type Run = (Sum, Vec<Spot>);

/// What is asked of the rails of an array where it lies.
struct Laid<'a> {
    array: &'a Array,
    /// Where rails begin and end.
    ends: [i64; 2],
    phase: i64,
}

/// The best layout of an array of a small job; `None` where none of the places tried makes one.
pub(crate) fn best(places: &Places, number: usize) -> Option<Best> {
    let small = places.small;
    let array = &small.arrays[number];
    let fixed = |rail: usize| small.kept.iter().find(move |given| given.fixed == Some((number, rail)));
    let [left, right, down, up] = array.shift;
    let bands = array.bands();
    // Of each rail and each height that it can have, the places along it.
    let spots: Vec<Vec<Vec<Spot>>> = bands
        .iter()
        .enumerate()
        .map(|(rail, [from, to])| {
            let heights = array.v + from - down..=array.v + to + up;
            heights.map(|v| spots(places, array, v * SIXTEENTH, fixed(rail))).collect()
        })
        .collect();
    let mut best: Option<Best> = None;
    for by in across(small, array) {
        debug_assert!((-left..=right).contains(&by));
        let ends = [array.u + by, array.u + by + array.width()].map(|u| u * SIXTEENTH);
        for phase in 0..array.stagger {
            let laid = Laid { array, ends, phase };
            let runs: Vec<Vec<Option<Run>>> = bands
                .iter()
                .zip(&spots)
                .enumerate()
                .map(|(rail, ([from, _], spots))| {
                    let lowest = array.v + from - down;
                    let heights = (lowest..).zip(spots);
                    heights.map(|(v, spots)| laid.run(rail, v * SIXTEENTH, spots)).collect()
                })
                .collect();
            for rise in -down..=up {
                let first = (rise + down) as usize;
                let rails = bands.iter().zip(&runs).map(|([from, to], runs)| {
                    let within =
                        (first..=first + (to - from) as usize).filter_map(|i| Some((i, runs[i].as_ref()?)));
                    within.min_by(|(_, a), (_, b)| a.0.partial_cmp(&b.0).unwrap())
                });
                let Some(rails) = rails.collect::<Option<Vec<_>>>() else { continue };
                let sum = rails.iter().fold(Sum::default(), |sum, (_, run)| sum + run.0);
                if best.as_ref().is_some_and(|best| best.sum <= sum) {
                    continue;
                }
                let mut posts = Vec::new();
                for (rail, (i, (_, spots))) in rails.iter().enumerate() {
                    let v = (array.v + bands[rail][0] - down + *i as i64) * SIXTEENTH;
                    let set = spots.iter().filter(|spot| spot.stand.is_some()).enumerate();
                    posts.extend(set.map(|(post, spot)| {
                        (format!("{}-{}-{}", array.name, rail + 1, post + 1), spot.u, v)
                    }));
                }
                best = Some(Best { sum, moved: [by, rise], posts });
            }
        }
    }
    best
}

/// How far an array is moved along the eave: in quarters of an inch, and to where its ends or the overhangs from them
/// are at a rafter.
fn across(small: &Small, array: &Array) -> Vec<i64> {
    let [left, right, ..] = array.shift;
    let ends = [array.u, array.u + array.width()];
    let at_rafters =
        small.rafters.iter().flatten().flat_map(|u| {
            [u - ends[0], u - ends[1], u - array.overhang - ends[0], u + array.overhang - ends[1]]
        });
    let mut all: Vec<i64> = (-left..=right).step_by(4).chain(at_rafters).collect();
    all.retain(|by| (-left..=right).contains(by));
    all.sort_unstable();
    all.dedup();
    all
}

/// The places along a rail at a height, from left to right; none where a fixed post asks for another height.
fn spots(places: &Places, array: &Array, v: i64, fixed: Option<&Given>) -> Vec<Spot> {
    let small = places.small;
    if fixed.is_some_and(|post| post.v * SIXTEENTH != v) {
        return Vec::new();
    }
    let [left, right, ..] = array.shift;
    let reach = (array.u - left) * SIXTEENTH..=(array.u + array.width() + right) * SIXTEENTH;
    let least = i128::from(array.least_distance * SIXTEENTH);
    let apart = |u: i64, post: &Given| {
        let [u, v] = [u - post.u * SIXTEENTH, v - post.v * SIXTEENTH].map(i128::from);
        u * u + v * v >= least * least
    };
    let rafters = (0..small.rafters.len()).map(Stand::Rafter);
    let bays = (0..small.rafters.len() - 1).map(Stand::Bay).filter(|_| array.blocking);
    let stands = rafters.chain(bays).filter_map(|stand| {
        let u = places.u(stand, v).filter(|u| reach.contains(u))?;
        let beside = small.kept.iter().filter(|post| post.fixed.is_none());
        if !beside.into_iter().all(|post| apart(u, post)) {
            return None;
        }
        Some(Spot { u, stand: Some(stand), sum: places.sum(stand, v)? })
    });
    let fixed = fixed.map(|post| Spot { u: post.u * SIXTEENTH, stand: None, sum: Sum::default() });
    let mut spots: Vec<Spot> = stands.chain(fixed).collect();
    spots.sort_by_key(|spot| spot.u);
    spots
}

impl Laid<'_> {
    /// The best posts of a rail at a height: from each place the best way to it, with one post or with more.
    fn run(&self, rail: usize, v: i64, spots: &[Spot]) -> Option<Run> {
        let turn = |spot: &&Spot| {
            let stand =
                spot.stand.map(|stand| (stand.number() - rail as i64 - self.phase) % self.array.stagger);
            stand.unwrap_or(0) == 0
        };
        let [from, to] = self.ends;
        if spots.iter().any(|spot| spot.stand.is_none() && !(from..=to).contains(&spot.u)) {
            return None;
        }
        let spots: Vec<Spot> =
            spots.iter().filter(turn).filter(|spot| (from..=to).contains(&spot.u)).copied().collect();
        let skips = |i: usize, j: usize| spots[i..j].iter().any(|spot| spot.stand.is_none());
        let (span, overhang) = (self.array.span, self.array.overhang);
        let hangs = |a: i64, b: i64| b - a <= self.most(v, a, b, overhang, |i| self.array.zones[i].overhang);
        let spans = |a: i64, b: i64| b - a <= self.most(v, a, b, span, |i| self.array.zones[i].span);

        let mut ways: Vec<[Option<Run>; 2]> = Vec::new();
        for (j, spot) in spots.iter().enumerate() {
            let first = !skips(0, j) && hangs(from, spot.u);
            let alone = first.then(|| (spot.sum, vec![*spot]));
            let before = (0..j).filter(|&i| {
                let apart = spot.u - spots[i].u;
                apart > 0
                    && apart >= self.array.least_distance * SIXTEENTH
                    && spans(spots[i].u, spot.u)
                    && !skips(i + 1, j)
            });
            let more = before
                .flat_map(|i| ways[i].iter().flatten())
                .min_by(|a, b| a.0.partial_cmp(&b.0).unwrap())
                .map(|(sum, run)| (*sum + spot.sum, run.iter().chain([spot]).copied().collect()));
            ways.push([alone, more]);
        }
        let last = (0..spots.len()).filter(|&j| hangs(spots[j].u, to) && !skips(j + 1, spots.len()));
        let runs = last.filter_map(|j| ways[j][1].clone());
        runs.min_by(|a, b| a.0.partial_cmp(&b.0).unwrap())
    }

    /// The least limit of a stretch of a rail.
    fn most(&self, v: i64, from: i64, to: i64, of_array: i64, of_zone: impl Fn(usize) -> i64) -> i64 {
        let zones = self.array.zones.iter().enumerate().filter(|(_, zone)| {
            let [[left, lower], [right, upper]] = [zone.from, zone.to].map(|at| at.map(|l| l * SIXTEENTH));
            (lower..=upper).contains(&v) && from <= right && left <= to
        });
        zones.map(|(i, _)| of_zone(i)).fold(of_array, i64::min) * SIXTEENTH
    }
}
