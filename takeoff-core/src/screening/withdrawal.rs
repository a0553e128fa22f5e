//! How hard a lag screw holds in wood.
use crate::num::math;
use crate::units::Length;

/// Reference withdrawal value of a lag screw in side grain, lbf per inch of thread in the wood; the tapered tip does
/// not count.
///
/// # Formula
///
/// `W = 1800 · G^1.5 · D^0.75`, `G` the wood's specific gravity (oven dry), `D` the screw's diameter in inches.
///
/// # Source
///
/// National Design Specification for Wood Construction (NDS) 2018, equation 12.2-1.
///
/// # Example
///
/// Southern pine, `G = 0.55`, and a 1/2 in lag: `0.55^1.5 = 0.40789`, `0.5^0.75 = 0.59460`;
/// `1800 · 0.40789 · 0.59460 = 436.56` (the NDS's table 12.2A prints 437).
///
/// ```
/// use takeoff_core::{screening::withdrawal_lbf_per_in, units::Length};
/// let half_inch = Length::parse("1/2 in")?;
/// assert!((withdrawal_lbf_per_in(0.55, half_inch) - 436.56).abs() < 0.005);
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
pub fn withdrawal_lbf_per_in(specific_gravity: f64, diameter: Length) -> f64 {
    1800.0 * math::pow(specific_gravity, 1.5) * math::pow(inches(diameter), 0.75)
}

/// Diameters of pilot holes for the threaded part, least and greatest, as shares of the screw's diameter.
///
/// # Source
///
/// NDS 2018, 12.1.4.2: three groups of wood (seen in the NDS commentary of 1997, 9.1.2.1); the shares are from memory.
///
/// # Example
///
/// A 5/16 in lag in wood of `G = 0.50`: `0.40 · 5/16 = 1/8 in` to `0.70 · 5/16 = 0.219 in`.
pub fn pilot_shares(specific_gravity: f64) -> [f64; 2] {
    match specific_gravity {
        g if g > 0.6 => [0.65, 0.85],
        g if g > 0.5 => [0.60, 0.75],
        _ => [0.40, 0.70],
    }
}

/// In inches.
pub(super) fn inches(length: Length) -> f64 {
    length.nm() as f64 / Length::INCH.nm() as f64
}
