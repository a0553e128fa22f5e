//! The lengths that pieces laid end to end can reach.
use std::collections::{BTreeMap, BTreeSet};

/// How to round sizes where there are too many sums to walk them all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Rounding {
    /// Nothing gets smaller: what fits on the grid fits.
    Up,
    /// Nothing gets larger: what fits fits on the grid.
    Down,
}

/// The places along a side where pieces can end: 0 first, then ascending.
#[derive(Debug)]
pub(super) struct Grid {
    ends: Vec<i64>,
    rounding: Rounding,
    /// For places `a ≥ b`, at `a·(a + 1)/2 + b`: the last place within `ends[a] − ends[b]`.
    rests: Vec<u32>,
}

impl Grid {
    /// The sums of these sizes up to a limit or, if there are more than so many, as many steps of equal size.
    pub(super) fn of(sizes: impl Iterator<Item = i64>, limit: i64, most: usize, rounding: Rounding) -> Grid {
        let mut sizes: Vec<i64> = sizes.filter(|&size| size <= limit).collect();
        sizes.sort_unstable();
        sizes.dedup();
        let ends = sums(&sizes, limit, most).unwrap_or_else(|| {
            let step = limit / most as i64 + 1;
            (0..limit).step_by(step as usize).chain([limit]).collect()
        });
        let mut rests = Vec::with_capacity(ends.len() * (ends.len() + 1) / 2);
        for (a, &end) in ends.iter().enumerate() {
            let mut rest = a;
            for &start in &ends[..=a] {
                while ends[rest] > end - start {
                    rest -= 1;
                }
                rests.push(rest as u32);
            }
        }
        Grid { ends, rounding, rests }
    }

    /// How many places there are.
    pub(super) fn steps(&self) -> usize {
        self.ends.len()
    }

    /// The places.
    pub(super) fn ends(&self) -> &[i64] {
        &self.ends
    }

    /// The place where a piece of this size ends that begins at 0, not 0 itself; none beyond the last place.
    pub(super) fn end(&self, size: i64) -> Option<usize> {
        let end = match self.rounding {
            Rounding::Up => self.ends.partition_point(|&end| end < size),
            Rounding::Down => (self.ends.partition_point(|&end| end <= size) - 1).max(1),
        };
        (end < self.ends.len()).then_some(end)
    }

    /// The last place within the first half of the way to `end`.
    pub(super) fn half(&self, end: usize) -> usize {
        self.ends[..=end].partition_point(|&place| 2 * place <= self.ends[end]) - 1
    }

    /// The last place within what is left of `end` after the way to `start`.
    pub(super) fn rest(&self, end: usize, start: usize) -> usize {
        self.rests[end * (end + 1) / 2 + start] as usize
    }
}

/// All sums of sizes up to a limit, each used as often as one likes, 0 first; `None` if there are more than `most`.
fn sums(sizes: &[i64], limit: i64, most: usize) -> Option<Vec<i64>> {
    let mut sums = BTreeSet::from([0]);
    let mut at = 0;
    loop {
        sums.extend(sizes.iter().map(|size| at + size).take_while(|&sum| sum <= limit));
        if sums.len() > most {
            return None;
        }
        match sums.range(at + 1..).next() {
            Some(&next) => at = next,
            None => return Some(sums.into_iter().collect()),
        }
    }
}

/// The sums of lengths, each used at most as often as there are of it.
///
/// # Example
///
/// Three lengths of 10 reach 0, 10, 20 and 30: at least 15 is 20, at most 29 is 20 too.
pub(super) struct Sums {
    unit: i64,
    /// Bit `i` of word `w` is the sum `(64·w + i)·unit`.
    reached: Vec<u64>,
}

impl Sums {
    /// All sums up to a little more than `limit`; `None` when there are too many to try.
    pub(super) fn of(lengths: &BTreeMap<i64, u64>, limit: i64) -> Option<Sums> {
        const MOST_WORDS: i64 = 1 << 22;
        let unit = lengths.keys().fold(0, |unit, &length| common_divisor(unit, length));
        let words = (limit + lengths.keys().last()?) / unit / 64 + 1;
        let doublings: i64 = lengths.values().map(|count| i64::from(count.ilog2()) + 1).sum();
        if words.saturating_mul(doublings) > MOST_WORDS {
            return None;
        }
        let mut reached = vec![0; words as usize];
        reached[0] = 1;
        for (length, &count) in lengths {
            let (mut left, mut times) = (count, 1);
            while left > 0 {
                let now = left.min(times);
                shift_or(&mut reached, (length / unit).saturating_mul(now as i64));
                left -= now;
                times *= 2;
            }
        }
        Some(Sums { unit, reached })
    }

    /// The least sum not below this one.
    pub(super) fn at_least(&self, length: i64) -> Option<i64> {
        let first = (length + self.unit - 1) / self.unit;
        (first..self.reached.len() as i64 * 64).find(|&sum| self.has(sum)).map(|sum| sum * self.unit)
    }

    /// The greatest sum not above this one.
    pub(super) fn at_most(&self, length: i64) -> i64 {
        let last = (length / self.unit).min(self.reached.len() as i64 * 64 - 1);
        (0..=last).rev().find(|&sum| self.has(sum)).unwrap_or(0) * self.unit
    }

    fn has(&self, sum: i64) -> bool {
        self.reached[(sum / 64) as usize] >> (sum % 64) & 1 == 1
    }
}

/// Adds to the places reached those `by` farther on.
fn shift_or(reached: &mut [u64], by: i64) {
    let (words, bits) = (usize::try_from(by / 64).unwrap_or(usize::MAX), by % 64);
    for at in (words..reached.len()).rev() {
        let from = at - words;
        let mut moved = reached[from] << bits;
        if bits > 0 && from > 0 {
            moved |= reached[from - 1] >> (64 - bits);
        }
        reached[at] |= moved;
    }
}

fn common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}
