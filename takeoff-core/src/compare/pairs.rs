//! Two lists side by side.
use std::collections::BTreeMap;

/// A key with its entry in each of the lists.
pub(super) type Pair<'a, K, T> = (K, Option<&'a T>, Option<&'a T>);

/// The lists by their keys: in the order of the first, then what only the second has, in its order.
pub(super) fn pairs<'a, T, K: Ord>(
    bid: impl Iterator<Item = (K, &'a T)>,
    as_built: impl Iterator<Item = (K, &'a T)> + Clone,
) -> Vec<Pair<'a, K, T>> {
    let mut others: BTreeMap<K, &T> = as_built.clone().collect();
    let of_bid = bid.map(|(key, line)| {
        let other = others.remove(&key);
        (key, Some(line), other)
    });
    let mut pairs: Vec<_> = of_bid.collect();
    let added = as_built.filter(|(key, _)| others.contains_key(key));
    pairs.extend(added.map(|(key, line)| (key, None, Some(line))));
    pairs
}
