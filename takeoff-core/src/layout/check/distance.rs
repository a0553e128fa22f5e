//! The least distance between posts.
use super::array::Laid;
use super::codes::DISTANCE;
use crate::model::{Post, Problem};
use crate::num::math;
use crate::units::Length;

impl Laid<'_> {
    /// No post that was set below the array is nearer to any other of its slope than the least distance, measured
    /// straight.
    pub(super) fn apart(&self) -> Vec<Problem> {
        let set = self.set();
        let least = i128::from(self.rails.least_distance.nm());
        let mut found = Vec::new();
        for &(place, post) in &set {
            for (other_place, other) in self.laid.posts.iter().enumerate() {
                let told = other_place <= place && set.iter().any(|&(set, _)| set == other_place);
                let square = square_between(post, other);
                if told || square >= least * least {
                    continue;
                }
                let apart = Length::nearest(math::sqrt(square as f64)).unwrap_or(Length::LIMIT);
                let [apart, least] = [apart, self.rails.least_distance].map(|length| self.show(length));
                let what =
                    format!("`{}` and `{}` are {apart} apart, and must be {least}", post.name, other.name);
                found.push(self.error(DISTANCE, what, "move one of them"));
            }
        }
        found
    }
}

/// The square of the distance between two posts, nm².
fn square_between(a: &Post, b: &Post) -> i128 {
    let [u, v] = [a.at.u - b.at.u, a.at.v - b.at.v].map(|by| i128::from(by.nm()));
    u * u + v * v
}
