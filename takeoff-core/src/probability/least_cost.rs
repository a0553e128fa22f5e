//! Spares at the least expected cost.
use super::distribution::Distribution;

/// The number `s` of spares with the least expected cost `c·s + b·E[(X − s)+]`, where `c` is what a spare costs and `b`
/// what each tile short costs (a trip back, a roof left open): the least `s` with `P(X ≤ s) ≥ 1 − c/b`.
/// `cost_ratio` is `c/b`; where it is 1 or more, being short is no dearer than a spare, and 0 is best. `None` where
/// the number lies beyond the window of a heavy tail.
///
/// # Why?
///
/// One more spare costs `c` and saves `b` with the probability `P(X > s)`: it pays as long as that is above `c/b`.
///
/// # Source
///
/// The newsvendor problem of operations research, with critical ratio `(b − c)/b`: what is left over is worth nothing.
///
/// # Example
///
/// Ten tiles, one in ten breaks: `P(X ≤ 1) = 0.736`, `P(X ≤ 2) = 0.930`. A spare at 3.00 and 30.00 a tile short want
/// `P(X ≤ s) ≥ 0.9`: two spares. At 9.00 a tile short, 0.667 is enough: one.
///
/// ```
/// use takeoff_core::probability::{least_cost, Distribution};
/// let broken = Distribution::binomial(10, 0.1)?;
/// assert_eq!(least_cost(&broken, 3.0 / 30.0), Some(2));
/// assert_eq!(least_cost(&broken, 3.0 / 9.0), Some(1));
/// assert_eq!(least_cost(&broken, 1.0), Some(0));
/// # Ok::<(), takeoff_core::probability::CountError>(())
/// ```
pub fn least_cost(distribution: &Distribution, cost_ratio: f64) -> Option<u64> {
    distribution.quantile(1.0 - cost_ratio)
}
