//! The counts whose probabilities are worth keeping.
use std::iter::successors;

use super::distribution::{CountError, Distribution, TAIL};

/// The greatest standard deviation of a count. A window is at most some 42 deviations wide (the
/// geometric distribution's), so one never takes more than 7 MB.
const GREATEST_DEVIATION: f64 = 20_000.0;
/// Up to here every count is exact as a float.
const GREATEST_COUNT: u64 = 1 << 53;

/// The probabilities of a distribution, each divided by the mode's.
pub(super) struct Window {
    offset: u64,
    weights: Vec<f64>,
    /// Whether it ends where it has to and not where little is left.
    pub(super) cut_short: bool,
}

impl Window {
    /// From the mode and `step(k) = P(k + 1)/P(k)`, which is above 1 below the mode and not above it from there on,
    /// and reaches 0 at the support's end; at most `above` counts above the mode. An off-by-one mode is harmless.
    pub(super) fn about(mode: u64, above: usize, step: impl Fn(f64) -> f64) -> Window {
        let down = successors(Some((mode, 1.0)), |&(k, weight)| {
            let k = k.checked_sub(1)?;
            Some((k, weight / step(k as f64)))
        });
        let up = successors(Some((mode, 1.0)), |&(k, weight)| Some((k + 1, weight * step(k as f64))));
        let kept = |&weight: &f64| weight >= TAIL;

        let mut weights: Vec<f64> = down.skip(1).map(|(_, weight)| weight).take_while(kept).collect();
        weights.reverse();
        let offset = mode - weights.len() as u64;
        let below = weights.len();
        let most = above.saturating_add(1);
        weights.extend(up.map(|(_, weight)| weight).take_while(kept).take(most));
        Window { offset, cut_short: weights.len() - below == most, weights }
    }

    /// All counts from 0 to `n`, from `step(k) = P(k + 1)/P(k)`.
    pub(super) fn up_to(n: u64, step: impl Fn(f64) -> f64) -> Window {
        let up = successors(Some((0, 1.0)), |&(k, weight)| (k < n).then(|| (k + 1, weight * step(k as f64))));
        Window { offset: 0, weights: up.map(|(_, weight)| weight).collect(), cut_short: false }
    }

    /// The distribution, all of which the window holds.
    pub(super) fn whole(self) -> Result<Distribution, CountError> {
        let whole: f64 = self.weights.iter().sum();
        self.scaled(1.0 / whole)
    }

    /// The distribution, given the probability that has the weight 1; what is left of 1 lies beyond the window.
    pub(super) fn part(self, mode: f64) -> Result<Distribution, CountError> {
        let mut part = self.scaled(mode)?;
        part.beyond = (1.0 - part.pmf.iter().sum::<f64>()).max(0.0);
        Ok(part)
    }

    fn scaled(self, by: f64) -> Result<Distribution, CountError> {
        if !(by.is_finite() && by > 0.0) {
            return Err(CountError::TooLarge);
        }
        let pmf = self.weights.into_iter().map(|weight| weight * by).collect();
        Ok(Distribution { offset: self.offset, pmf, beyond: 0.0 })
    }
}

/// Refuses what would need too wide a window.
pub(super) fn bound(n: u64, deviation: f64) -> Result<(), CountError> {
    if n <= GREATEST_COUNT && deviation <= GREATEST_DEVIATION { Ok(()) } else { Err(CountError::TooLarge) }
}
