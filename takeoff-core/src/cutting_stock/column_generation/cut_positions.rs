//! Cut positions: the distances from an edge at which a cut can be useful.
use std::collections::BTreeSet;

/// Rounding of sizes to cut positions, where there are too many sums of sizes to use them all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::cutting_stock) enum Rounding {
    /// Sizes are rounded up: a pattern that fits on the positions fits in reality.
    Up,
    /// Sizes are rounded down: a pattern that fits in reality fits on the positions.
    Down,
}

/// The cut positions along one side of a rectangle, ascending from 0.
///
/// Either all sums of the pieces' sizes (normal patterns: Herz 1972; Christofides and Whitlock 1977) or, if these are
/// too many, equal steps and the end of the side.
#[derive(Debug)]
pub(in crate::cutting_stock) struct CutPositions {
    positions: Vec<i64>,
    rounding: Rounding,
    /// For positions `end ≥ cut`, at `end·(end + 1)/2 + cut`: the last position within what remains after the cut.
    remainders: Vec<u32>,
}

impl CutPositions {
    /// The positions on a side of length `limit`: at most `max_sums` sums of these sizes, otherwise about that many
    /// steps.
    pub(super) fn new(
        sizes: impl Iterator<Item = i64>,
        limit: i64,
        max_sums: usize,
        rounding: Rounding,
    ) -> CutPositions {
        let mut sizes: Vec<i64> = sizes.filter(|&size| size <= limit).collect();
        sizes.sort_unstable();
        sizes.dedup();
        let positions = sums(&sizes, limit, max_sums).unwrap_or_else(|| {
            let step = limit / max_sums as i64 + 1;
            (0..limit).step_by(step as usize).chain([limit]).collect()
        });
        let mut remainders = Vec::with_capacity(positions.len() * (positions.len() + 1) / 2);
        for (end, &position) in positions.iter().enumerate() {
            let mut remainder = end;
            for &cut in &positions[..=end] {
                while positions[remainder] > position - cut {
                    remainder -= 1;
                }
                remainders.push(remainder as u32);
            }
        }
        CutPositions { positions, rounding, remainders }
    }

    /// Number of positions, with that at 0.
    pub(super) fn count(&self) -> usize {
        self.positions.len()
    }

    /// The positions.
    pub(super) fn positions(&self) -> &[i64] {
        &self.positions
    }

    /// Index of the position at which a piece of this size ends if it begins at 0; never 0 itself; `None` beyond the
    /// last position.
    pub(super) fn end_of(&self, size: i64) -> Option<usize> {
        let end = match self.rounding {
            Rounding::Up => self.positions.partition_point(|&position| position < size),
            Rounding::Down => (self.positions.partition_point(|&position| position <= size) - 1).max(1),
        };
        (end < self.positions.len()).then_some(end)
    }

    /// Index of the last position in the first half of the distance to `end`. By symmetry no cut is needed beyond.
    pub(super) fn half(&self, end: usize) -> usize {
        self.positions[..=end].partition_point(|&position| 2 * position <= self.positions[end]) - 1
    }

    /// Index of the last position within what remains of the distance to `end` after a cut at `cut`.
    pub(super) fn remainder(&self, end: usize, cut: usize) -> usize {
        self.remainders[end * (end + 1) / 2 + cut] as usize
    }
}

/// All sums of any number of these sizes up to a limit, ascending from 0; `None` if there are more than `max`.
fn sums(sizes: &[i64], limit: i64, max: usize) -> Option<Vec<i64>> {
    let mut sums = BTreeSet::from([0]);
    let mut last = 0;
    loop {
        sums.extend(sizes.iter().map(|size| last + size).take_while(|&sum| sum <= limit));
        if sums.len() > max {
            return None;
        }
        match sums.range(last + 1..).next() {
            Some(&next) => last = next,
            None => return Some(sums.into_iter().collect()),
        }
    }
}
