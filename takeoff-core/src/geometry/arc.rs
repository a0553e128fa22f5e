//! Length of an arc of an ellipse.
use crate::num::math::{cos, sin};

/// Length of the arc `(a cos θ, b sin θ)` from `from` to `to` (radians, at most half a turn), in the unit of
/// `a` and `b`.
///
/// # Formula
///
/// `∫ sqrt(a² sin² θ + b² cos² θ) dθ`, by Gauss–Legendre with 8 points on eight equal parts; for a circle
/// `a·(to − from)`.
///
/// # Example
///
/// ```
/// use takeoff_core::geometry::ellipse_arc_length;
/// // Half a circle of radius 2 is 2π.
/// assert_eq!(ellipse_arc_length(2.0, 2.0, 0.0, std::f64::consts::PI), 2.0 * std::f64::consts::PI);
/// // A quarter of the ellipse 2 × 1: Ramanujan's second approximation of the whole, 9.688448, over 4.
/// let quarter = ellipse_arc_length(2.0, 1.0, 0.0, std::f64::consts::FRAC_PI_2);
/// assert!((quarter - 9.688448 / 4.0).abs() < 1e-6);
/// ```
pub fn ellipse_arc_length(a: f64, b: f64, from: f64, to: f64) -> f64 {
    if a == b {
        return a * (to - from);
    }
    const PARTS: usize = 8;
    /// Nodes and weights of the 8-point rule (Abramowitz & Stegun, table 25.4).
    const RULE: [(f64, f64); 4] = [
        (0.183_434_642_495_649_8, 0.362_683_783_378_362),
        (0.525_532_409_916_329, 0.313_706_645_877_887_3),
        (0.796_666_477_413_626_7, 0.222_381_034_453_374_48),
        (0.960_289_856_497_536_2, 0.101_228_536_290_376_26),
    ];
    let speed = |theta: f64| {
        let (x, y) = (a * sin(theta), b * cos(theta));
        (x * x + y * y).sqrt()
    };
    let half = (to - from) / (2 * PARTS) as f64;
    (0..PARTS)
        .map(|part| {
            let middle = from + half * (2 * part + 1) as f64;
            RULE.iter().map(|(x, w)| w * (speed(middle - half * x) + speed(middle + half * x))).sum::<f64>()
        })
        .sum::<f64>()
        * half
}
