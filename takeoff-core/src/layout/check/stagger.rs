//! Staggered rails: each uses every `n`th rafter, one further on than the rail below it.
use super::array::LaidArray;
use super::codes::STAGGER;
use super::rafters::Wood;
use super::rails::Rail;
use crate::model::{Post, Problem};

impl LaidArray<'_> {
    /// The rafter's number less the rail's leaves the same remainder for every post. Fixed posts are exempt.
    pub(super) fn stagger(&self, rails: &[Rail]) -> Option<Problem> {
        let every = i64::from(self.rails.stagger.max(1));
        let rafters = self.slope.rafters.as_ref()?;
        let posts = rails.iter().flat_map(|rail| rail.posts.iter().map(move |&post| (rail.number, post)));
        let phases = posts.filter(|(_, post)| !post.fixed).filter_map(|(rail, post)| {
            let rafter = Wood::under(post, rafters)?.rafter();
            Some((post, rail, rafter, (rafter as i64 - rail as i64).rem_euclid(every)))
        });
        let phases: Vec<(&Post, usize, usize, i64)> = phases.collect();
        let (first, rail, rafter, phase) = *phases.first()?;
        let (other, other_rail, other_rafter, _) = *phases.iter().find(|(.., other)| *other != phase)?;
        let what = format!(
            "`{}` of rail {} is at rafter {}, `{}` of rail {} at rafter {}; the stagger is {every}",
            first.name,
            rail + 1,
            rafter + 1,
            other.name,
            other_rail + 1,
            other_rafter + 1,
        );
        Some(self.problem(STAGGER, what, "move one of them to a rafter of its rail"))
    }
}
