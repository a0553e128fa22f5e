//! The cheapest posts along a rail: a shortest path over its candidates, from left to right.
use crate::geometry::grid;

use super::{CandidatePost, Rail};
use crate::layout::objective::Objective;

/// The cheapest posts of a rail with a given first and a given last one.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CheapestPath {
    /// `u` of the first post.
    pub(crate) first: i64,
    /// `u` of the last post.
    pub(crate) last: i64,
    /// Indices of the first and the last post in the list of candidates.
    ends: (usize, usize),
    pub(crate) objective: Objective,
}

/// The cheapest path to a candidate: its objective, and the index of the candidate before.
type Step = Option<(Objective, usize)>;

impl Rail<'_> {
    /// The cheapest posts for every first and every last one that some shift of the array allows. `ends` is the range of
    /// the rail's left end, `length` the rail's length.
    pub(crate) fn cheapest_paths(
        &self,
        candidates: &[CandidatePost],
        v: i64,
        ends: (i64, i64),
        length: i64,
    ) -> Vec<CheapestPath> {
        let overhang = grid(self.rails.greatest_overhang);
        // No path starts after the first fixed post or ends before the last one.
        let first_fixed = candidates.iter().position(|post| post.is_fixed).unwrap_or(candidates.len());
        let last_fixed = candidates.iter().rposition(|post| post.is_fixed).unwrap_or(0);
        let firsts = candidates.iter().enumerate().take(first_fixed.saturating_add(1));
        let firsts = firsts.filter(|(_, post)| (ends.0..=ends.1 + overhang).contains(&post.u));
        let mut found = Vec::new();
        for (first, from) in firsts {
            let steps = self.steps_from(first, candidates, v);
            let lasts = steps.iter().enumerate().skip(last_fixed.max(first + 1));
            let range = ends.0 + length - overhang..=ends.1 + length;
            let lasts = lasts.filter(|&(last, _)| range.contains(&candidates[last].u));
            found.extend(lasts.filter_map(|(last, step)| {
                step.map(|(objective, _)| CheapestPath {
                    first: from.u,
                    last: candidates[last].u,
                    ends: (first, last),
                    objective,
                })
            }));
        }
        found
    }

    /// The posts of a path, from the first to the last; `candidates` is the list in which it was found.
    pub(crate) fn posts_of(
        &self,
        path: &CheapestPath,
        candidates: &[CandidatePost],
        v: i64,
    ) -> Vec<CandidatePost> {
        let (first, last) = path.ends;
        let steps = self.steps_from(first, candidates, v);
        let mut posts = vec![candidates[last]];
        let mut at = last;
        while at != first {
            let Some((_, before)) = steps[at] else { return Vec::new() };
            at = before;
            posts.push(candidates[at]);
        }
        posts.reverse();
        posts
    }

    /// The cheapest path from the candidate at index `first` to each one; `None` without a path.
    fn steps_from(&self, first: usize, candidates: &[CandidatePost], v: i64) -> Vec<Step> {
        let most = grid(self.rails.greatest_span);
        let mut steps: Vec<Step> = vec![None; candidates.len()];
        steps[first] = Some((candidates[first].objective, first));
        for to in first + 1..candidates.len() {
            let there = candidates[to];
            let mut best: Step = None;
            for from in (first..to).rev() {
                let here = candidates[from];
                if there.u - here.u > most {
                    break;
                }
                if let Some((objective, _)) = steps[from]
                    && self.allows_neighbours(here.u, there.u, v)
                {
                    let objective = objective + there.objective;
                    if best.is_none_or(|(least, _)| objective < least) {
                        best = Some((objective, from));
                    }
                }
                // No path passes a fixed post by.
                if here.is_fixed {
                    break;
                }
            }
            steps[to] = best;
        }
        steps
    }
}
