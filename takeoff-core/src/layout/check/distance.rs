//! The least distance between posts.
use std::collections::BTreeSet;

use super::array::LaidArray;
use super::codes::DISTANCE;
use crate::model::{Post, Problem};
use crate::num::math;
use crate::units::Length;

impl LaidArray<'_> {
    /// No set post below the array is nearer than the least distance to another post of its slope, measured straight.
    pub(super) fn distances(&self) -> Vec<Problem> {
        let set = self.set();
        let own: BTreeSet<usize> = set.iter().map(|&(index, _)| index).collect();
        let least = i128::from(self.rails.least_distance.nm());
        let mut found = Vec::new();
        for &(index, post) in &set {
            for (other_index, other) in self.laid.posts.iter().enumerate() {
                let square = square_between(post, other);
                // Two posts of the array are one pair, reported from the first of them.
                let is_seen = other_index == index || (other_index < index && own.contains(&other_index));
                if square >= least * least || is_seen {
                    continue;
                }
                let apart = Length::from_nm(math::sqrt(square as f64).round() as i64);
                let [apart, least] = [apart, self.rails.least_distance].map(|length| self.show(length));
                let what = format!(
                    "`{}` and `{}` are {apart} apart; the least distance is {least}",
                    post.name, other.name
                );
                found.push(self.problem(DISTANCE, what, "move one of them"));
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
