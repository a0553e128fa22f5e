//! The distribution of a count.
use std::fmt;

use super::window::{TAIL, Window};
use crate::num::math::sqrt;

/// A probability this little below the level asked for still reaches it: a sum that is a tie on
/// paper is not decided by its last bits.
const TIE: f64 = 1e-12;
/// The greatest standard deviation of a count. A window is at most some 42 deviations wide (the
/// geometric distribution's), so one never takes more than 7 MB.
const GREATEST_DEVIATION: f64 = 20_000.0;
/// Up to here every count is exact as a float.
const GREATEST_COUNT: u64 = 1 << 53;

/// How likely each value 0, 1, 2, … of a count is.
///
/// # How is it kept exact?
///
/// Only the window where the probabilities are not negligible is kept, dense. It is found from the
/// mode (the likeliest count): its weight is set to 1 and the others follow from the ratio of
/// neighbours, outward, so nothing underflows and no factorial is needed. The weights are then
/// divided by their sum. That is no approximation: over all counts the probabilities sum to 1, and the two
/// tails left out hold next to nothing: less than 1e-18 each of the whole where the distribution is
/// log-concave (beyond the cut it falls at least as fast as on the way to it), and less than 1e-12 where the rate is
/// a [`Rate::Beta`](super::Rate). Taking the mode's probability from log-gamma functions instead would be worse: at
/// a million tiles their difference keeps only nine digits.
///
/// # And a heavy tail?
///
/// Where a crew's record says little, the spares for cut tiles may be any number: their tail falls no faster than a
/// power of the count, and no window holds it. The window then ends where
/// [`beta_failures_before`](Self::beta_failures_before) says, its probabilities are still exact, and what lies beyond is kept as one number: [`quantile`](Self::quantile) has no answer there.
#[derive(Clone, Debug, PartialEq)]
pub struct Distribution {
    /// The count that the first probability belongs to.
    pub(super) offset: u64,
    /// Probabilities of `offset`, `offset + 1`, …; never empty.
    pub(super) pmf: Vec<f64>,
    /// Probability of all counts above the window; 0 unless the tail is heavy.
    pub(super) beyond: f64,
}

/// Why a count has no distribution that can be computed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CountError {
    /// Not a probability, or a certain breakage where a success is waited for.
    Probability(f64),
    /// So many tiles, or so much breakage, that the count spreads too wide to be tabulated.
    TooLarge,
    /// The service level lies in a tail that the crew's record says too little about.
    RecordTooShort,
}

impl fmt::Display for CountError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CountError::Probability(p) => {
                write!(f, "breakage `{p}` is not from 0 to 1, or is 1 for a tile whose spare is cut again")
            }
            CountError::TooLarge => {
                f.write_str("too many tiles, or too high a breakage, to count the spares exactly")
            }
            CountError::RecordTooShort => f.write_str(
                "so little is known of how often a cut tile breaks that no number of spares reaches the service level",
            ),
        }
    }
}

impl std::error::Error for CountError {}

impl Distribution {
    /// The count that is always `count`.
    pub fn certain(count: u64) -> Distribution {
        Distribution { offset: count, pmf: vec![1.0], beyond: 0.0 }
    }

    /// How many of `n` tiles break, each with probability `p`:
    /// `P(X = k) = C(n, k) p^k (1 − p)^(n − k)`, the binomial distribution.
    ///
    /// # Errors
    ///
    /// `p` is not within 0 to 1, or the standard deviation `sqrt(n p (1 − p))` is above 20 000.
    ///
    /// # Example
    ///
    /// Two tosses of a coin: no head 1/4, one head 1/2, two heads 1/4.
    ///
    /// ```
    /// use takeoff_core::probability::Distribution;
    /// let heads = Distribution::binomial(2, 0.5)?;
    /// assert_eq!(heads.cdf(1), 0.75);
    /// assert_eq!(heads.quantile(0.8), Some(2));
    /// # Ok::<(), takeoff_core::probability::CountError>(())
    /// ```
    pub fn binomial(n: u64, p: f64) -> Result<Distribution, CountError> {
        if !(0.0..=1.0).contains(&p) {
            return Err(CountError::Probability(p));
        }
        if p == 1.0 {
            return Ok(Distribution::certain(n));
        }
        let trials = n as f64;
        bound(n, sqrt(trials * p * (1.0 - p)))?;
        let mode = ((trials + 1.0) * p) as u64;
        let odds = p / (1.0 - p);
        Window::about(mode.min(n), usize::MAX, |k| (trials - k) / (k + 1.0) * odds).whole()
    }

    /// How many tiles break before the `n`-th is cut whole, each with probability `p` of breaking:
    /// `P(F = f) = C(n + f − 1, f) p^f (1 − p)^n`, the negative binomial distribution. It is the
    /// number of spares used for `n` cuts when a spare is cut too, and may break in its turn.
    ///
    /// # Errors
    ///
    /// `p` is not within 0 to less than 1 (for no tiles, any probability will do), or the standard
    /// deviation `sqrt(n p)/(1 − p)` is above 20 000.
    ///
    /// # Example
    ///
    /// One tile, and every second cut fails: no spare with 1/2, one with 1/4, two with 1/8, …
    ///
    /// ```
    /// use takeoff_core::probability::Distribution;
    /// let spares = Distribution::failures_before(1, 0.5)?;
    /// assert!((spares.cdf(2) - 7.0 / 8.0).abs() < 1e-15);
    /// assert_eq!(spares.quantile(0.9), Some(3)); // 15/16, where two spares reach only 7/8
    /// # Ok::<(), takeoff_core::probability::CountError>(())
    /// ```
    pub fn failures_before(n: u64, p: f64) -> Result<Distribution, CountError> {
        if !(0.0..=1.0).contains(&p) || (p == 1.0 && n > 0) {
            return Err(CountError::Probability(p));
        }
        if n == 0 {
            return Ok(Distribution::certain(0));
        }
        let successes = n as f64;
        bound(n, sqrt(successes * p) / (1.0 - p))?;
        let mode = ((successes - 1.0) * p / (1.0 - p)) as u64;
        Window::about(mode, usize::MAX, |f| p * (successes + f) / (f + 1.0)).whole()
    }

    /// The distribution of the sum of two independent counts.
    pub fn convolve(&self, other: &Distribution) -> Distribution {
        let (long, short) =
            if self.pmf.len() < other.pmf.len() { (&other.pmf, &self.pmf) } else { (&self.pmf, &other.pmf) };
        let mut pmf = vec![0.0; long.len() + short.len() - 1];
        for (shift, a) in short.iter().enumerate() {
            for (sum, b) in pmf[shift..].iter_mut().zip(long) {
                *sum += a * b;
            }
        }
        // A sum is known as far as it can't hold a count from beyond a window.
        let known = [self, other].iter().filter(|d| d.beyond > 0.0).map(|d| d.pmf.len()).min();
        let cut_off: f64 = pmf.drain(known.unwrap_or(pmf.len())..).rev().sum();
        let beyond = self.beyond + other.beyond * (1.0 - self.beyond) + cut_off;
        // Keep the window as narrow as the sum needs, however many counts are added up.
        let least = TAIL * pmf.iter().fold(0.0_f64, |greatest, &p| greatest.max(p));
        let end = pmf.iter().rposition(|&p| p >= least).map_or(pmf.len(), |last| last + 1);
        pmf.truncate(end);
        let start = pmf.iter().position(|&p| p >= least).unwrap_or(0);
        pmf.drain(..start);
        Distribution { offset: self.offset + other.offset + start as u64, pmf, beyond }
    }

    /// `P(X = k)`.
    pub fn probability(&self, k: u64) -> f64 {
        k.checked_sub(self.offset)
            .and_then(|i| usize::try_from(i).ok())
            .and_then(|i| self.pmf.get(i))
            .map_or(0.0, |p| *p)
    }

    /// `P(X ≤ s)`; for an `s` beyond the window of a heavy tail, at least so much.
    pub fn cdf(&self, s: u64) -> f64 {
        let (up_to, _) = self.pmf.split_at(self.values_up_to(s));
        up_to.iter().sum::<f64>().min(1.0)
    }

    /// `P(X > s)`, to some 1e-18: more digits of a small chance than `1 − cdf` has. For an `s` beyond the window of
    /// a heavy tail, at most so much.
    pub fn chance_above(&self, s: u64) -> f64 {
        let (_, above) = self.pmf.split_at(self.values_up_to(s));
        (self.beyond + above.iter().rev().sum::<f64>()).min(1.0)
    }

    /// How many of the window's values are `≤ s`.
    fn values_up_to(&self, s: u64) -> usize {
        let values = s.checked_sub(self.offset).map_or(0, |i| i.saturating_add(1));
        usize::try_from(values).map_or(self.pmf.len(), |values| values.min(self.pmf.len()))
    }

    /// The least `s` with `P(X ≤ s) + 1e-12 ≥ q`; `None` where it lies beyond the window of a heavy tail. For a `q`
    /// of 1 or more, at most the window's last value.
    pub fn quantile(&self, q: f64) -> Option<u64> {
        if q <= TIE {
            return Some(0);
        }
        let mut reached = TIE;
        let reaches = |&p: &f64| {
            reached += p;
            reached >= q
        };
        let place = self.pmf.iter().position(reaches);
        let last = (self.beyond <= TIE).then_some(self.pmf.len() - 1);
        Some(self.offset + place.or(last)? as u64)
    }

    /// The mean of the count, as far as the window holds it.
    pub fn mean(&self) -> f64 {
        self.offset as f64 + self.mean_in_window()
    }

    /// The variance of the count, as far as the window holds it.
    pub fn variance(&self) -> f64 {
        let mean = self.mean_in_window();
        self.pmf.iter().zip(0u32..).map(|(p, i)| p * (f64::from(i) - mean) * (f64::from(i) - mean)).sum()
    }

    fn mean_in_window(&self) -> f64 {
        self.pmf.iter().zip(0u32..).map(|(p, i)| p * f64::from(i)).sum()
    }
}

/// Refuses what would need too wide a window.
pub(super) fn bound(n: u64, deviation: f64) -> Result<(), CountError> {
    if n <= GREATEST_COUNT && deviation <= GREATEST_DEVIATION { Ok(()) } else { Err(CountError::TooLarge) }
}
