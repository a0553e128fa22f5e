//! Subset sums: the total lengths that pieces laid end to end can have.
use std::collections::BTreeMap;

/// Limit on the work to find all sums: words of the bit set × shifts.
const MAX_WORK: i64 = 1 << 22;

/// All sums of some lengths, each used at most as often as it is given.
///
/// # Example
///
/// Three lengths of 10 have the sums 0, 10, 20 and 30. The least from 15 on is 20; so is the greatest up to 29.
pub(in crate::cutting_stock) struct SubsetSums {
    /// Greatest common divisor of the lengths.
    unit: i64,
    /// Bit `b` of word `w` stands for the sum `(64·w + b)·unit`.
    sums: Vec<u64>,
}

impl SubsetSums {
    /// The sums up to `limit` and at least one length beyond. Lengths are given with their counts; `None` if there are
    /// no lengths or too many sums.
    pub(in crate::cutting_stock) fn new(lengths: &BTreeMap<i64, u64>, limit: i64) -> Option<SubsetSums> {
        let unit = lengths.keys().fold(0, |unit, &length| greatest_common_divisor(unit, length));
        let words = (limit + lengths.keys().last()?) / unit / 64 + 1;
        let shifts: i64 = lengths.values().map(|count| i64::from(count.ilog2()) + 1).sum();
        if words.saturating_mul(shifts) > MAX_WORK {
            return None;
        }
        let mut sums = vec![0; words as usize];
        sums[0] = 1;
        for (length, &count) in lengths {
            // Doubling multiples, the last one shortened, combine to every multiple from 0 to `count`.
            let (mut left, mut multiple) = (count, 1);
            while left > 0 {
                let now = left.min(multiple);
                add_shifted(&mut sums, (length / unit).saturating_mul(now as i64));
                left -= now;
                multiple *= 2;
            }
        }
        Some(SubsetSums { unit, sums })
    }

    /// The least sum that is not below a length; `None` if it lies beyond the limit.
    pub(in crate::cutting_stock) fn at_least(&self, length: i64) -> Option<i64> {
        let first = (length + self.unit - 1) / self.unit;
        (first..self.sums.len() as i64 * 64).find(|&sum| self.contains(sum)).map(|sum| sum * self.unit)
    }

    /// The greatest sum that is not above a length.
    pub(in crate::cutting_stock) fn at_most(&self, length: i64) -> i64 {
        let last = (length / self.unit).min(self.sums.len() as i64 * 64 - 1);
        (0..=last).rev().find(|&sum| self.contains(sum)).unwrap_or(0) * self.unit
    }

    fn contains(&self, sum: i64) -> bool {
        self.sums[(sum / 64) as usize] >> (sum % 64) & 1 == 1
    }
}

/// Adds to a bit set its own bits, shifted up by `by`.
fn add_shifted(bits: &mut [u64], by: i64) {
    let (words, rest) = (usize::try_from(by / 64).unwrap_or(usize::MAX), by % 64);
    // From the top, so that each word is read before it changes.
    for to in (words..bits.len()).rev() {
        let from = to - words;
        let mut shifted = bits[from] << rest;
        if rest > 0 && from > 0 {
            shifted |= bits[from - 1] >> (64 - rest);
        }
        bits[to] |= shifted;
    }
}

fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}
