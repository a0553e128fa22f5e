//! Names of cells.
use std::collections::BTreeSet;

/// Letters of an item that its cell's name keeps.
const LONGEST: usize = 60;

/// The names of things as names of cells take them: lower-case letters, digits and `_`, no two alike.
///
/// ```text
/// lag 5/16 x 3 1/2 in   →   lag_5_16_x_3_1_2_in
/// ```
pub(super) fn keys(things: impl IntoIterator<Item = impl AsRef<str>>) -> Vec<String> {
    let mut taken = BTreeSet::new();
    let mut keys = Vec::new();
    for thing in things {
        let plain = plain(thing.as_ref());
        let numbered = (2..).map(|n: u64| format!("{plain}_{n}"));
        let free = std::iter::once(plain.clone()).chain(numbered).find(|key| !taken.contains(key));
        let key = free.unwrap_or(plain);
        taken.insert(key.clone());
        keys.push(key);
    }
    keys
}

fn plain(thing: &str) -> String {
    let letters = thing.to_ascii_lowercase();
    let words = letters.split(|c: char| !c.is_ascii_alphanumeric()).filter(|word| !word.is_empty());
    words.collect::<Vec<_>>().join("_").chars().take(LONGEST).collect()
}
