//! The known word that somebody most likely meant.

/// The nearest of the `known` words, if one is near enough to be meant: at most a third of its letters
/// changed, added, dropped or swapped with a neighbour (and always at least one). Of equals, the first.
///
/// Only the first two hundred known words are tried: the time is bounded whatever a file holds.
pub(crate) fn suggest<'a>(word: &str, known: &[&'a str]) -> Option<&'a str> {
    let mut best: Option<(usize, &str)> = None;
    for &candidate in known.iter().take(200) {
        let far = distance(word, candidate);
        let enough = (candidate.chars().count() / 3).max(1);
        if far <= enough && best.is_none_or(|(least, _)| far < least) {
            best = Some((far, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// Letters that have to be changed, added, dropped or swapped with their neighbour to make `b` of `a`,
/// capitals and punctuation aside (restricted Damerau–Levenshtein distance).
fn distance(a: &str, b: &str) -> usize {
    let letters = |word: &str| -> Vec<char> {
        word.chars().take(64).filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
    };
    let (a, b) = (letters(a), letters(b));
    let mut before = Vec::new();
    let mut above: Vec<usize> = (0..=b.len()).collect();
    for (i, &letter) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, &other) in b.iter().enumerate() {
            let change = above[j] + usize::from(letter != other);
            let mut least = change.min(above[j + 1] + 1).min(row[j] + 1);
            if i > 0 && j > 0 && letter == b[j - 1] && a[i - 1] == other {
                least = least.min(before[j - 1] + 1);
            }
            row.push(least);
        }
        before = std::mem::replace(&mut above, row);
    }
    above[b.len()]
}
