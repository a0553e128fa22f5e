//! Rails that take turns on the rafters.
use super::array::Laid;
use super::codes::STAGGER;
use super::rafters::Stand;
use super::rails::Rail;
use crate::model::{Post, Problem};

impl Laid<'_> {
    /// Less its rail's number, every post's rafter leaves the same rest. Fixed posts stand where they stand.
    pub(super) fn stagger(&self, rails: &[Rail]) -> Option<Problem> {
        let every = i64::from(self.rails.stagger.max(1));
        let rafters = self.slope.rafters.as_ref()?;
        let posts = rails.iter().flat_map(|rail| rail.posts.iter().map(move |&post| (rail.number, post)));
        let turns = posts.filter(|(_, post)| !post.fixed).filter_map(|(rail, post)| {
            let number = Stand::of(post, rafters)?.number();
            Some((post, rail, number, (number as i64 - rail as i64).rem_euclid(every)))
        });
        let turns: Vec<(&Post, usize, usize, i64)> = turns.collect();
        let (first, rail, number, rest) = *turns.first()?;
        let (other, other_rail, other_number, _) = *turns.iter().find(|(.., other)| *other != rest)?;
        let what = format!(
            "`{}` of rail {} is at rafter {}, `{}` of rail {} at rafter {}, and rails take turns in {every}",
            first.name,
            rail + 1,
            number + 1,
            other.name,
            other_rail + 1,
            other_number + 1,
        );
        Some(self.error(STAGGER, what, "move one of them to a rafter whose turn it is"))
    }
}
