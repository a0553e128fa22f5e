//! The lap lines of the underlayment: where the lower edges of the sheets run.
use crate::geometry::grid;
use crate::model::{LapLines, Slope};

/// The lower edges of all sheets but the first, in grid steps.
#[derive(Clone, Debug)]
pub enum SheetLaps {
    /// `first + i·step`, `i ≥ 0`.
    Regular {
        /// The lowest.
        first: i64,
        /// Sheet width less head lap.
        step: i64,
    },
    /// Measured, ascending.
    Measured(Vec<i64>),
}

impl SheetLaps {
    /// The lap lines of a slope.
    ///
    /// # Example
    ///
    /// Felt 36 in wide with a 2 in head lap, the first line at 34 in: lines at 34, 68, 102 in…
    pub fn of(slope: &Slope) -> SheetLaps {
        match &slope.lap_lines {
            LapLines::Regular { first } => {
                let sheet = &slope.underlayment;
                SheetLaps::Regular { first: grid(*first), step: grid(sheet.sheet_width - sheet.head_lap) }
            }
            LapLines::Measured(lines) => SheetLaps::Measured(lines.iter().map(|&v| grid(v)).collect()),
        }
    }

    /// The lowest line at or above `v`.
    pub fn lowest_from(&self, v: i64) -> Option<i64> {
        match self {
            SheetLaps::Regular { first, step } => {
                let up = (v - first + step - 1).div_euclid(*step).max(0);
                Some(first + up * step)
            }
            SheetLaps::Measured(lines) => lines.get(lines.partition_point(|&line| line < v)).copied(),
        }
    }

    /// All lines from `low` to `high`, both included.
    pub fn between(&self, low: i64, high: i64) -> impl Iterator<Item = i64> + '_ {
        let next = move |from: i64| self.lowest_from(from).filter(|&line| line <= high);
        std::iter::successors(next(low), move |&line| next(line + 1))
    }
}
