//! The cheapest posts along a rail: a shortest path over what they may stand on, from left to right.
use crate::geometry::grid;

use crate::layout::objective::Objective;
use crate::layout::rail::{CandidatePost, Rail};

/// The cheapest posts of a rail from one first to one last, both counted in a list of [`Standing`].
#[derive(Clone, Copy, Debug)]
pub(crate) struct CheapestPath {
    /// Where the first and the last stand along the eave.
    pub(crate) first: i64,
    pub(crate) last: i64,
    /// Their places in the list.
    ends: (usize, usize),
    pub(crate) objective: Objective,
}

impl Rail<'_> {
    /// The posts that may stand on the rail at a height, from left to right, where it is their rafters' turn.
    pub(crate) fn candidates_at(&self, v: i64, stagger_phase: usize) -> Vec<CandidatePost> {
        self.candidates_of_phase(stagger_phase, |line| {
            let span = self.interval_at(line, v)?;
            Some((self.u_at(line, v), self.objective(line, span, v)))
        })
    }

    /// The same between two heights: what may stand all the way, at the lower of its costs at both ends.
    pub(crate) fn candidates_between(&self, low: i64, high: i64, stagger_phase: usize) -> Vec<CandidatePost> {
        let cost_may_rise = self.cost_may_rise();
        self.candidates_of_phase(stagger_phase, |line| {
            let span = self.interval_at(line, high).filter(|span| span.from <= low)?;
            let at_top = self.objective(line, span, high);
            let objective = if cost_may_rise { at_top.min(self.objective(line, span, low)) } else { at_top };
            Some((self.u_at(line, high), objective))
        })
    }

    fn candidates_of_phase(
        &self,
        stagger_phase: usize,
        at: impl Fn(usize) -> Option<(i64, Objective)>,
    ) -> Vec<CandidatePost> {
        let phases = (0..self.lines.len()).filter(|&line| self.is_in_phase(line, stagger_phase));
        let mut candidates: Vec<CandidatePost> = phases
            .filter_map(|line| {
                let (u, objective) = at(line)?;
                Some(CandidatePost { line, u, objective, fixed: self.is_fixed(line) })
            })
            .collect();
        candidates.sort_by_key(|post| post.u);
        candidates
    }

    /// How far a rail at a height may run on from `from` to `to` without a post between: as the rails, and the zones
    /// that it meets, allow.
    fn greatest_span(&self, from: i64, to: i64, v: i64) -> i64 {
        let zones = self.rails.zones.iter().filter(|zone| zone.meets(from, to, v));
        let least = zones.map(|zone| zone.greatest_span).fold(self.rails.greatest_span, Ord::min);
        grid(least)
    }

    /// How far it may run on beyond its last post.
    pub(crate) fn greatest_overhang(&self, from: i64, to: i64, v: i64) -> i64 {
        let zones = self.rails.zones.iter().filter(|zone| zone.meets(from, to, v));
        let least = zones.map(|zone| zone.greatest_overhang).fold(self.rails.greatest_overhang, Ord::min);
        grid(least)
    }

    /// From the post at place `first` of a list to each other, the cheapest way and the post before; `None` where there
    /// is no way.
    fn shortest_from(
        &self,
        first: usize,
        candidates: &[CandidatePost],
        v: i64,
    ) -> Vec<Option<(Objective, usize)>> {
        let least = grid(self.rails.least_distance);
        let most = grid(self.rails.greatest_span);
        let mut ways: Vec<Option<(Objective, usize)>> = vec![None; candidates.len()];
        ways[first] = Some((candidates[first].objective, first));
        for to in first + 1..candidates.len() {
            let there = candidates[to];
            let mut best: Option<(Objective, usize)> = None;
            for from in (first..to).rev() {
                let (here, way) = (candidates[from], there.u - candidates[from].u);
                if way > most {
                    break;
                }
                let fits = way >= least && way > 0 && way <= self.greatest_span(here.u, there.u, v);
                if let Some((objective, _)) = ways[from].filter(|_| fits) {
                    let objective = objective + there.objective;
                    if best.is_none_or(|(least, _)| objective < least) {
                        best = Some((objective, from));
                    }
                }
                // A fixed post is never passed by.
                if here.fixed {
                    break;
                }
            }
            ways[to] = best;
        }
        ways
    }

    /// The cheapest posts from every first to every last that the array's shift allows; `ends` is how far left and
    /// right the rail's left end may be, `long` how long it is.
    pub(crate) fn best(
        &self,
        candidates: &[CandidatePost],
        v: i64,
        ends: (i64, i64),
        long: i64,
    ) -> Vec<CheapestPath> {
        let overhang = grid(self.rails.greatest_overhang);
        let first_fixed = candidates.iter().position(|post| post.fixed).unwrap_or(candidates.len());
        let last_fixed = candidates.iter().rposition(|post| post.fixed).unwrap_or(0);
        let firsts = candidates.iter().enumerate().take(first_fixed.saturating_add(1));
        let firsts = firsts.filter(|(_, post)| (ends.0..=ends.1 + overhang).contains(&post.u));
        let mut found = Vec::new();
        for (first, from) in firsts {
            let ways = self.shortest_from(first, candidates, v);
            let lasts = ways.iter().enumerate().skip(last_fixed.max(first + 1));
            let lasts = lasts.filter(|&(last, _)| {
                (ends.0 + long - overhang..=ends.1 + long).contains(&candidates[last].u)
            });
            found.extend(lasts.filter_map(|(last, way)| {
                way.map(|(objective, _)| CheapestPath {
                    first: from.u,
                    last: candidates[last].u,
                    ends: (first, last),
                    objective,
                })
            }));
        }
        found
    }

    /// Whether posts from `first` to `last` carry the rail with its left end at `left`.
    pub(crate) fn carries(&self, best: &CheapestPath, left: i64, long: i64, v: i64) -> bool {
        self.carries_from_to(best.first, best.last, left, long, v)
    }

    /// The same of posts that stand at `first` and `last` along the eave.
    pub(crate) fn carries_from_to(&self, first: i64, last: i64, left: i64, long: i64, v: i64) -> bool {
        let right = left + long;
        let (before, after) = (first - left, right - last);
        before >= 0
            && after >= 0
            && before <= self.greatest_overhang(left, first, v)
            && after <= self.greatest_overhang(last, right, v)
    }

    /// Whether posts on these feet carry the rail at another height, each within the spans and the least distance.
    pub(crate) fn holds(&self, posts: &[CandidatePost], v: i64, left: i64, long: i64) -> bool {
        let us: Vec<i64> = posts.iter().map(|post| self.u_at(post.line, v)).collect();
        let ways = us.windows(2).all(|pair| {
            let way = pair[1] - pair[0];
            way > 0
                && way >= grid(self.rails.least_distance)
                && way <= self.greatest_span(pair[0], pair[1], v)
        });
        let (Some(first), Some(last)) = (us.first(), us.last()) else { return false };
        ways && self.carries_from_to(*first, *last, left, long, v)
    }

    /// The posts themselves, from the first to the last; `standing` is the list that `best` was found in.
    pub(crate) fn posts(
        &self,
        candidates: &[CandidatePost],
        v: i64,
        best: &CheapestPath,
    ) -> Vec<CandidatePost> {
        let (first, last) = best.ends;
        let ways = self.shortest_from(first, candidates, v);
        let mut posts = vec![candidates[last]];
        let mut at = last;
        while at != first {
            let Some((_, before)) = ways[at] else { return Vec::new() };
            at = before;
            posts.push(candidates[at]);
        }
        posts.reverse();
        posts
    }

    fn is_fixed(&self, line: usize) -> bool {
        self.lines[line].anchor.number().is_none()
    }
}
