//! Needs gathered by item, each with its reasons.
use std::collections::BTreeMap;

use super::{Basis, MaterialLine};
use crate::model::{Assembly, Job};
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::Unit;

/// What is needed of each item, and why. Items are kept by name.
pub(super) struct Needs {
    unit: Unit,
    by_item: BTreeMap<String, Vec<Basis>>,
}

impl Needs {
    /// Nothing yet; what will be added is counted in `unit`.
    pub(super) fn new(unit: Unit) -> Needs {
        Needs { unit, by_item: BTreeMap::new() }
    }

    /// Adds `each` for every place; nothing when there is nothing to add.
    pub(super) fn add(&mut self, item: &str, what: String, each: f64, places: Vec<String>) {
        let count = places.len() as u64;
        if count > 0 && each > 0.0 {
            let basis = Basis { what, count, each, places };
            self.by_item.entry(item.to_owned()).or_default().push(basis);
        }
    }

    /// A line an item, by name, with no waste added.
    pub(super) fn into_lines(self) -> Vec<MaterialLine> {
        let unit = self.unit;
        let lines = self.by_item.into_iter().map(|(item, basis)| line(item, unit, 0.0, basis));
        lines.collect()
    }
}

/// A line whose need is the sum of its reasons.
pub(super) fn line(item: String, unit: Unit, waste: f64, basis: Vec<Basis>) -> MaterialLine {
    let need: f64 = basis.iter().map(|basis| basis.count as f64 * basis.each).sum();
    MaterialLine { item, unit, need, waste, bring: need * (1.0 + waste), packs_of: None, basis }
}

/// Things that are alike, gathered: what they share, and where each is.
pub(super) struct Alike<K, T>(BTreeMap<K, (T, Vec<String>)>);

impl<K: Ord, T> Alike<K, T> {
    pub(super) fn new() -> Alike<K, T> {
        Alike(BTreeMap::new())
    }

    /// Adds one at a place of a slope; `shared` is kept from the first of a kind.
    pub(super) fn add(&mut self, kind: K, shared: T, slope: &str, place: &str) {
        self.0.entry(kind).or_insert((shared, Vec::new())).1.push(format!("{slope}/{place}"));
    }

    /// What each kind shares and where its things are, in the order of the kinds.
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

/// The assemblies of the posts that get a blocking board, by name, each with those posts.
pub(super) fn boards_by_assembly<'a>(
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
