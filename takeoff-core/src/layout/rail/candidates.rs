//! Candidate posts of a rail at one height, or between two heights.
use super::Rail;
use crate::layout::objective::Objective;

/// A post that can stand on a rail at one height.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CandidatePost {
    /// Index in [`Rail::lines`].
    pub(crate) line: usize,
    pub(crate) u: i64,
    pub(crate) objective: Objective,
    /// Whether it is a fixed post, which the rail has to take.
    pub(crate) is_fixed: bool,
}

impl Rail<'_> {
    /// The candidates at a height, from left to right, on the rafters of the stagger phase.
    pub(crate) fn candidates_at(&self, v: i64, stagger_phase: usize) -> Vec<CandidatePost> {
        self.candidates(stagger_phase, |line| {
            let interval = self.interval_at(line, v)?;
            Some((self.u_at(line, v), self.objective(line, interval, v)))
        })
    }

    /// The candidates at all heights from `low` to `high`, each with a bound on its objective there: within an interval
    /// it is concave in the height, and so not below the lower of its values at both ends.
    pub(crate) fn candidates_between(&self, low: i64, high: i64, stagger_phase: usize) -> Vec<CandidatePost> {
        let cost_may_rise = self.cost_may_rise();
        self.candidates(stagger_phase, |line| {
            let interval = self.interval_at(line, high).filter(|interval| interval.from <= low)?;
            let at_top = self.objective(line, interval, high);
            let bound = if cost_may_rise { at_top.min(self.objective(line, interval, low)) } else { at_top };
            Some((self.u_at(line, high), bound))
        })
    }

    fn candidates(
        &self,
        stagger_phase: usize,
        place: impl Fn(usize) -> Option<(i64, Objective)>,
    ) -> Vec<CandidatePost> {
        let in_phase = (0..self.lines.len()).filter(|&line| self.is_in_phase(line, stagger_phase));
        let mut candidates: Vec<CandidatePost> = in_phase
            .filter_map(|line| {
                let (u, objective) = place(line)?;
                Some(CandidatePost { line, u, objective, is_fixed: self.lines[line].anchor.is_fixed() })
            })
            .collect();
        candidates.sort_by_key(|post| post.u);
        candidates
    }

    /// Whether the stagger allows the rail a post on a line. Rails use every `n`th rafter, each rail one further on than
    /// the rail below it.
    fn is_in_phase(&self, line: usize, stagger_phase: usize) -> bool {
        let every = self.rails.stagger.max(1) as usize;
        let in_phase = |rafter: usize| rafter % every == (self.number + stagger_phase) % every;
        self.lines[line].anchor.rafter().is_none_or(in_phase)
    }
}
