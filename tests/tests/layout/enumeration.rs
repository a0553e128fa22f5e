//! Enumeration of all places a sixteenth of an inch apart: the best layout among them.
use crate::places::{Anchor, Objective, Places};
use crate::small_job::{Array, ArrayShift, GivenPost, SIXTEENTH, SmallJob};

/// The best layout of an array among the enumerated ones.
pub(crate) struct Best {
    pub(crate) objective: Objective,
    /// Shift to the right and up.
    pub(crate) shift: ArrayShift,
    /// Name, `u` and `v` in nanometres.
    pub(crate) posts: Vec<(String, i64, i64)>,
}

/// A candidate post of a rail.
#[derive(Clone, Copy)]
struct Candidate {
    u: i64,
    /// `None` for a fixed post.
    anchor: Option<Anchor>,
    objective: Objective,
}

/// A rail at a height: the objective of its posts, and the posts.
type Path = (Objective, Vec<Candidate>);

/// An array at a shift, for one stagger phase.
struct PlacedArray<'a> {
    array: &'a Array,
    /// The left and right ends of its rails.
    ends: [i64; 2],
    phase: i64,
}

/// The best layout of an array of a small job; `None` if no enumerated place gives one.
pub(crate) fn best(places: &Places, number: usize) -> Option<Best> {
    let small = places.small;
    let array = &small.arrays[number];
    let fixed = |rail: usize| small.kept.iter().find(move |given| given.fixed == Some((number, rail)));
    let [left, right, down, up] = array.shift;
    let windows = array.windows();
    // By rail and by height: the candidates along it.
    let candidates: Vec<Vec<Vec<Candidate>>> = windows
        .iter()
        .enumerate()
        .map(|(rail, [from, to])| {
            let heights = array.v + from - down..=array.v + to + up;
            heights.map(|v| candidates(places, array, v * SIXTEENTH, fixed(rail))).collect()
        })
        .collect();
    let mut best: Option<Best> = None;
    for by in across(small, array) {
        debug_assert!((-left..=right).contains(&by));
        let ends = [array.u + by, array.u + by + array.width()].map(|u| u * SIXTEENTH);
        for phase in 0..array.stagger {
            let placed = PlacedArray { array, ends, phase };
            let paths: Vec<Vec<Option<Path>>> = windows
                .iter()
                .zip(&candidates)
                .enumerate()
                .map(|(rail, ([from, _], candidates))| {
                    let lowest = array.v + from - down;
                    let heights = (lowest..).zip(candidates);
                    heights.map(|(v, candidates)| placed.path(rail, v * SIXTEENTH, candidates)).collect()
                })
                .collect();
            for rise in -down..=up {
                let first = (rise + down) as usize;
                let rails = windows.iter().zip(&paths).map(|([from, to], paths)| {
                    let within =
                        (first..=first + (to - from) as usize).filter_map(|i| Some((i, paths[i].as_ref()?)));
                    within.min_by(|(_, a), (_, b)| a.0.partial_cmp(&b.0).unwrap())
                });
                let Some(rails) = rails.collect::<Option<Vec<_>>>() else { continue };
                let objective =
                    rails.iter().fold(Objective::default(), |objective, (_, path)| objective + path.0);
                if best.as_ref().is_some_and(|best| best.objective <= objective) {
                    continue;
                }
                let mut posts = Vec::new();
                for (rail, (i, (_, candidates))) in rails.iter().enumerate() {
                    let v = (array.v + windows[rail][0] - down + *i as i64) * SIXTEENTH;
                    let set = candidates.iter().filter(|candidate| candidate.anchor.is_some()).enumerate();
                    posts.extend(set.map(|(post, candidate)| {
                        (format!("{}-{}-{}", array.name, rail + 1, post + 1), candidate.u, v)
                    }));
                }
                best = Some(Best { objective, shift: [by, rise], posts });
            }
        }
    }
    best
}

/// The shifts of an array along the eave: every quarter of an inch, and those that bring an end or an overhang to a rafter.
fn across(small: &SmallJob, array: &Array) -> Vec<i64> {
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

/// The candidates along a rail at a height, from left to right; none if a fixed post of the rail is at another height.
fn candidates(places: &Places, array: &Array, v: i64, fixed: Option<&GivenPost>) -> Vec<Candidate> {
    let small = places.small;
    if fixed.is_some_and(|post| post.v * SIXTEENTH != v) {
        return Vec::new();
    }
    let [left, right, ..] = array.shift;
    let reach = (array.u - left) * SIXTEENTH..=(array.u + array.width() + right) * SIXTEENTH;
    let least = i128::from(array.least_distance * SIXTEENTH);
    let is_apart = |u: i64, post: &GivenPost| {
        let [u, v] = [u - post.u * SIXTEENTH, v - post.v * SIXTEENTH].map(i128::from);
        u * u + v * v >= least * least
    };
    let rafters = (0..small.rafters.len()).map(Anchor::Rafter);
    let bays = (0..small.rafters.len() - 1).map(Anchor::Bay).filter(|_| array.blocking);
    let anchors = rafters.chain(bays).filter_map(|anchor| {
        let u = places.u(anchor, v).filter(|u| reach.contains(u))?;
        let beside = small.kept.iter().filter(|post| post.fixed.is_none());
        if !beside.into_iter().all(|post| is_apart(u, post)) {
            return None;
        }
        Some(Candidate { u, anchor: Some(anchor), objective: places.objective(anchor, v)? })
    });
    let fixed =
        fixed.map(|post| Candidate { u: post.u * SIXTEENTH, anchor: None, objective: Objective::default() });
    let mut candidates: Vec<Candidate> = anchors.chain(fixed).collect();
    candidates.sort_by_key(|candidate| candidate.u);
    candidates
}

impl PlacedArray<'_> {
    /// The best posts of a rail at a height, from the best path to each candidate: with one post, and with more.
    fn path(&self, rail: usize, v: i64, candidates: &[Candidate]) -> Option<Path> {
        let in_phase = |candidate: &&Candidate| {
            let remainder = candidate
                .anchor
                .map(|anchor| (anchor.rafter() - rail as i64 - self.phase) % self.array.stagger);
            remainder.unwrap_or(0) == 0
        };
        let [from, to] = self.ends;
        if candidates
            .iter()
            .any(|candidate| candidate.anchor.is_none() && !(from..=to).contains(&candidate.u))
        {
            return None;
        }
        let candidates: Vec<Candidate> = candidates
            .iter()
            .filter(in_phase)
            .filter(|candidate| (from..=to).contains(&candidate.u))
            .copied()
            .collect();
        let skips = |i: usize, j: usize| candidates[i..j].iter().any(|candidate| candidate.anchor.is_none());
        let (span, overhang) = (self.array.span, self.array.overhang);
        let hangs = |a: i64, b: i64| b - a <= self.most(v, a, b, overhang, |i| self.array.zones[i].overhang);
        let spans = |a: i64, b: i64| b - a <= self.most(v, a, b, span, |i| self.array.zones[i].span);

        let mut paths: Vec<[Option<Path>; 2]> = Vec::new();
        for (j, candidate) in candidates.iter().enumerate() {
            let first = !skips(0, j) && hangs(from, candidate.u);
            let alone = first.then(|| (candidate.objective, vec![*candidate]));
            let before = (0..j).filter(|&i| {
                let apart = candidate.u - candidates[i].u;
                apart > 0
                    && apart >= self.array.least_distance * SIXTEENTH
                    && spans(candidates[i].u, candidate.u)
                    && !skips(i + 1, j)
            });
            let more = before
                .flat_map(|i| paths[i].iter().flatten())
                .min_by(|a, b| a.0.partial_cmp(&b.0).unwrap())
                .map(|(objective, path)| {
                    (*objective + candidate.objective, path.iter().chain([candidate]).copied().collect())
                });
            paths.push([alone, more]);
        }
        let last =
            (0..candidates.len()).filter(|&j| hangs(candidates[j].u, to) && !skips(j + 1, candidates.len()));
        let paths = last.filter_map(|j| paths[j][1].clone());
        paths.min_by(|a, b| a.0.partial_cmp(&b.0).unwrap())
    }

    /// The least limit on a stretch of a rail.
    fn most(&self, v: i64, from: i64, to: i64, of_array: i64, of_zone: impl Fn(usize) -> i64) -> i64 {
        let zones = self.array.zones.iter().enumerate().filter(|(_, zone)| {
            let [[left, lower], [right, upper]] = [zone.from, zone.to].map(|at| at.map(|l| l * SIXTEENTH));
            (lower..=upper).contains(&v) && from <= right && left <= to
        });
        zones.map(|(i, _)| of_zone(i)).fold(of_array, i64::min) * SIXTEENTH
    }
}
