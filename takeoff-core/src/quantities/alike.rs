//! Pieces of work that are alike, each with its place.
use std::collections::BTreeMap;

use crate::model::{Assembly, Job};
use crate::slope_takeoff::SlopeTakeoff;

/// Things gathered by kind: for each kind what its things share, and their places.
pub(super) struct Alike<K, T>(BTreeMap<K, (T, Vec<String>)>);

impl<K: Ord, T> Alike<K, T> {
    pub(super) fn new() -> Alike<K, T> {
        Alike(BTreeMap::new())
    }

    /// Adds a thing at a place of a slope; `shared` is kept from the first of its kind.
    pub(super) fn add(&mut self, kind: K, shared: T, slope: &str, place: &str) {
        self.0.entry(kind).or_insert((shared, Vec::new())).1.push(format!("{slope}/{place}"));
    }

    /// What the things of each kind share and their places, in the order of the kinds.
    pub(super) fn groups(self) -> impl Iterator<Item = (T, Vec<String>)> {
        self.0.into_values()
    }
}

/// The assemblies that posts use, by name, each with its posts.
pub(super) fn posts_by_assembly(job: &Job) -> impl Iterator<Item = (&Assembly, Vec<String>)> {
    let mut alike = Alike::new();
    for slope in &job.slopes {
        for post in &slope.posts {
            alike.add(post.assembly.name.as_str(), &*post.assembly, &slope.name, &post.name);
        }
    }
    alike.groups()
}

/// The assemblies of the posts that stand on blocking, by name, each with those posts.
pub(super) fn posts_on_blocking<'a>(
    job: &'a Job,
    slopes: &[SlopeTakeoff],
) -> impl Iterator<Item = (&'a Assembly, Vec<String>)> {
    let mut alike = Alike::new();
    for (slope, takeoff) in job.slopes.iter().zip(slopes) {
        for (post, row) in slope.posts.iter().zip(&takeoff.posts) {
            if row.support.is_some_and(|support| support.board.is_some()) {
                alike.add(post.assembly.name.as_str(), &*post.assembly, &slope.name, &post.name);
            }
        }
    }
    alike.groups()
}
