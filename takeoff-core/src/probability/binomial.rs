//! Counts of broken tiles where the rate is known.
use super::distribution::{CountError, Distribution};
use super::window::{Window, bound};
use crate::num::math::sqrt;

impl Distribution {
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
}
