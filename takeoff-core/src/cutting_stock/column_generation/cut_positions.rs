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
    remainders: Remainders,
}

/// How the position that remains after a cut is found.
#[derive(Debug)]
enum Remainders {
    /// Positions in equal steps, of which `whole` fit on the side.
    EqualSteps { whole: usize },
    /// For a `cut` in the first half of the distance to `end`: entry `starts[end] + cut`, below `starts[end + 1]`.
    Table { starts: Vec<usize>, entries: Vec<u32> },
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
        if let Some(positions) = sums(&sizes, limit, max_sums) {
            let remainders = Remainders::table(&positions);
            return CutPositions { positions, rounding, remainders };
        }
        let step = limit / max_sums as i64 + 1;
        let positions: Vec<i64> = (0..limit).step_by(step as usize).chain([limit]).collect();
        let remainders = Remainders::EqualSteps { whole: (limit / step) as usize };
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

    /// Whether a cut lies in the first half of the distance to `end`. By symmetry no cut is needed beyond.
    pub(super) fn is_in_first_half(&self, cut: usize, end: usize) -> bool {
        2 * self.positions[cut] <= self.positions[end]
    }

    /// Index of the last position in the first half of the distance to `end`.
    pub(super) fn half(&self, end: usize) -> usize {
        self.positions[..=end].partition_point(|&position| 2 * position <= self.positions[end]) - 1
    }

    /// Index of the last position within what remains of the distance to `end` after a cut at `cut`, which is not 0.
    pub(super) fn remainder(&self, end: usize, cut: usize) -> usize {
        match &self.remainders {
            // Up to `whole` the indices count steps. The end of the side may be one more, after a shorter step that no
            // remainder can use.
            Remainders::EqualSteps { whole } => end.min(*whole).saturating_sub(cut),
            Remainders::Table { starts, entries } => match entries.get(starts[end] + cut) {
                Some(&remainder) if starts[end] + cut < starts[end + 1] => remainder as usize,
                _ => {
                    let left = self.positions[end] - self.positions[cut];
                    self.positions[..=end].partition_point(|&position| position <= left) - 1
                }
            },
        }
    }
}

impl Remainders {
    fn table(positions: &[i64]) -> Remainders {
        let mut starts = vec![0];
        let mut entries = Vec::new();
        for (end, &position) in positions.iter().enumerate() {
            let mut remainder = end;
            for &cut in positions.iter().take_while(|&&cut| 2 * cut <= position) {
                while positions[remainder] > position - cut {
                    remainder -= 1;
                }
                entries.push(remainder as u32);
            }
            starts.push(entries.len());
        }
        Remainders::Table { starts, entries }
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
