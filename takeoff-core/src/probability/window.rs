//! The counts whose probabilities are worth keeping.
use std::iter::successors;

use super::distribution::{CountError, Distribution};

/// Weights below this part of the greatest are left out of the window.
pub(super) const TAIL: f64 = 1e-18;

/// The probabilities of a distribution, each divided by the mode's.
pub(super) struct Window {
    offset: u64,
    weights: Vec<f64>,
    /// Whether it ends where it has to and not where little is left.
    pub(super) cut_short: bool,
}

impl Window {
    /// From the mode and `step(k) = P(k + 1)/P(k)`, which is above 1 below the mode and not above it from there on,
    /// and reaches 0 at the support's end; at most `above` counts above the mode. A mode one off does no harm.
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
