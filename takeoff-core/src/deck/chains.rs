//! Things linked two by two, gathered into chains.
use rstar::primitives::GeomWithData;
use rstar::{AABB, RTree};

/// Chains of linked things, each in ascending order, in the order of their first members.
///
/// A thing is a point of `N` coordinates, and all that are linked to it lie in its boxes. A thing leaves the tree when it is
/// first found, so that no link is followed twice: `n log n` for `n` things, however many links there are.
pub(super) fn chains<const N: usize>(
    places: &[[f64; N]],
    boxes: impl Fn(usize) -> Vec<AABB<[f64; N]>>,
) -> Vec<Vec<usize>> {
    let numbered = places.iter().enumerate().map(|(thing, place)| GeomWithData::new(*place, thing));
    let mut tree = RTree::bulk_load(numbered.collect());
    let mut found = vec![false; places.len()];
    let mut chains = Vec::new();
    for first in 0..places.len() {
        if std::mem::replace(&mut found[first], true) {
            continue;
        }
        let mut chain = vec![first];
        let mut next = 0;
        while let Some(&thing) = chain.get(next) {
            for linked in boxes(thing) {
                let linked = tree.drain_in_envelope(linked).map(|linked| linked.data);
                chain.extend(linked.filter(|&linked| !std::mem::replace(&mut found[linked], true)));
            }
            next += 1;
        }
        chain.sort_unstable();
        chains.push(chain);
    }
    chains
}
