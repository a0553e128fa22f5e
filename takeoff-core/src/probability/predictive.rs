//! Counts of broken tiles where the rate itself is known from a record only: Beta(α, β).
//!
//! Every tile of a class breaks with the same rate, known or not; so the tiles of a class are no longer
//! independent, and one distribution stands for all of them together.
use super::distribution::{CountError, Distribution};
use super::window::{Window, bound};
use crate::num::math::sqrt;

/// How far above its mode a heavy tail is followed, at least; for very many tiles a quarter of their number.
const WIDEST: u64 = 8_192;
/// The most tiles, and the highest mode, of a heavy tail.
const MOST: u64 = 4_000_000;
/// What keeps a product of many factors within the range of a float.
const SCALE: f64 = 1e200;

impl Distribution {
    /// How many of `n` tiles break, the rate being Beta(α, β):
    /// `P(X = k) = C(n, k) B(α + k, β + n − k)/B(α, β)`, the beta-binomial distribution.
    ///
    /// # How?
    ///
    /// By the ratio of neighbours, `P(k + 1)/P(k) = (n − k)(α + k)/((k + 1)(β + n − k − 1))`: no gamma function is
    /// needed. Where α and β are both below 1 the ends are the likeliest, and every count is kept.
    ///
    /// # Errors
    ///
    /// α or β is not above 0, or the standard deviation `sqrt(n αβ(α + β + n)/(α + β + 1))/(α + β)` is above 20 000.
    ///
    /// # Example
    ///
    /// Every rate is as likely as any other, Beta(1, 1): so is every count of broken tiles.
    ///
    /// ```
    /// use takeoff_core::probability::Distribution;
    /// let broken = Distribution::beta_binomial(4, 1.0, 1.0)?;
    /// assert!((broken.probability(3) - 1.0 / 5.0).abs() < 1e-15);
    /// # Ok::<(), takeoff_core::probability::CountError>(())
    /// ```
    pub fn beta_binomial(n: u64, alpha: f64, beta: f64) -> Result<Distribution, CountError> {
        check(alpha, beta)?;
        let (trials, both) = (n as f64, alpha + beta);
        bound(n, sqrt(trials * (alpha / both) * (beta / both) * (both + trials) / (both + 1.0)))?;
        let step = |k: f64| (trials - k) / (k + 1.0) * (alpha + k) / (beta + trials - k - 1.0);
        if alpha < 1.0 && beta < 1.0 {
            return Window::up_to(n, step).whole();
        }
        let mode = match ((trials + 1.0) * (alpha - 1.0) / (both - 2.0)) as u64 {
            _ if beta <= 1.0 => n,
            _ if alpha <= 1.0 => 0,
            mode => mode.min(n),
        };
        Window::about(mode, usize::MAX, step).whole()
    }

    /// How many tiles break before the `n`-th is cut whole, the rate being Beta(α, β):
    /// `P(F = f) = C(n + f − 1, f) B(α + f, β + n)/B(α, β)`, the beta negative binomial distribution.
    ///
    /// # How?
    ///
    /// By the ratio of neighbours, `P(f + 1)/P(f) = (n + f)(α + f)/((f + 1)(α + β + n + f))`. The tail falls like
    /// `f^−(β + 1)`: the mean exists where β > 1 only. Where it is too heavy for a window of 8 192 counts above the
    /// mode (`n/4`, if that is more), the probabilities are made absolute by `P(F = 0) = Π (β + i)/(α + β + i)`, `i` from 0 to `n − 1`, and what
    /// they leave of 1 lies beyond.
    ///
    /// # Errors
    ///
    /// α or β is not above 0, or `n` or the likeliest count is above four million.
    ///
    /// # Example
    ///
    /// One tile, every rate as likely as any other: `P(F = f) = B(1 + f, 2) = 1/((f + 1)(f + 2))`, no mean. Nine in
    /// ten times, 9 spares are enough: `P(F ≤ 9) = 1 − 1/11`, and `P(F ≤ 8) = 1 − 1/10` is on the very level.
    ///
    /// ```
    /// use takeoff_core::probability::Distribution;
    /// let spares = Distribution::beta_failures_before(1, 1.0, 1.0)?;
    /// assert!((spares.probability(0) - 1.0 / 2.0).abs() < 1e-12);
    /// assert!((spares.cdf(9) - 10.0 / 11.0).abs() < 1e-12);
    /// assert_eq!(spares.quantile(0.9), Some(8));
    /// assert_eq!(spares.quantile(0.9999), None); // 9 998 spares: beyond the window
    /// # Ok::<(), takeoff_core::probability::CountError>(())
    /// ```
    pub fn beta_failures_before(n: u64, alpha: f64, beta: f64) -> Result<Distribution, CountError> {
        check(alpha, beta)?;
        if n == 0 {
            return Ok(Distribution::certain(0));
        }
        let (successes, both) = (n as f64, alpha + beta);
        let mode = ((successes - 1.0) * (alpha - 1.0) / (beta + 1.0)) as u64;
        if n > MOST || mode > MOST {
            return Err(CountError::TooLarge);
        }
        let step = |f: f64| (successes + f) / (f + 1.0) * (alpha + f) / (both + successes + f);
        let widest = usize::try_from(WIDEST.max(n / 4)).unwrap_or(usize::MAX);
        let window = Window::about(mode, widest, step);
        if !window.cut_short {
            return window.whole();
        }
        let none = (0..n).map(|i| (beta + i as f64) / (both + i as f64));
        window.part(product(none.chain((0..mode).map(|f| step(f as f64)))))
    }
}

fn check(alpha: f64, beta: f64) -> Result<(), CountError> {
    let good = |x: f64| x.is_finite() && x > 0.0;
    if good(alpha) && good(beta) { Ok(()) } else { Err(CountError::Probability(alpha / (alpha + beta))) }
}

/// The product of factors that may leave the range of a float on the way to a result within it.
fn product(factors: impl Iterator<Item = f64>) -> f64 {
    let (product, scaled) =
        factors.fold((1.0_f64, 0_u32), |(product, scaled), factor| match product * factor {
            small if small < 1.0 / SCALE => (small * SCALE, scaled + 1),
            large if large > 1.0 && scaled > 0 => (large / SCALE, scaled - 1),
            product => (product, scaled),
        });
    if scaled == 0 { product } else { 0.0 }
}
