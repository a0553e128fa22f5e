//! Wind uplift on an array that lies parallel to the roof.
use schemars::JsonSchema;
use serde::Serialize;

use crate::model::{Wind, WindEquation};
use crate::num::math;
use crate::units::{Area, Pressure};

/// Where a post's uplift pressure comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PressureFrom {
    /// The job gives it.
    Given,
    /// The equation.
    Equation,
    /// The equation gives less than the least.
    Least,
}

/// The uplift pressure at one post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uplift {
    /// Square to the roof, away from it.
    pub pressure: Pressure,
    /// Where it comes from.
    pub from: PressureFrom,
    /// The pressure equalisation factor, where the equation is used.
    pub gamma_a: Option<f64>,
}

impl Wind {
    /// The uplift pressure at a post that carries so much of the array.
    pub fn uplift(&self, area: Area) -> Uplift {
        let equation = match self {
            Wind::Pressure(pressure) => {
                return Uplift { pressure: *pressure, from: PressureFrom::Given, gamma_a: None };
            }
            Wind::Equation(equation) => equation,
        };
        let gamma_a = equation.gamma_a.unwrap_or_else(|| area_factor(area));
        let pa = velocity_pressure(equation).pa() * -equation.gcp * equation.gamma_e * gamma_a;
        let (pressure, from) = if pa < equation.least.pa() {
            (equation.least, PressureFrom::Least)
        } else {
            (Pressure::from_pa(pa), PressureFrom::Equation)
        };
        Uplift { pressure, from, gamma_a: Some(gamma_a) }
    }
}

/// Velocity pressure at the mean height of the roof.
///
/// # Formula
///
/// `q_h = 0.00256 · Kz · Kzt · Kd · Ke · V²`, in psf, `V` in mph.
///
/// # Source
///
/// ASCE 7-16, equation 26.10-1.
///
/// # Example
///
/// 110 mph, `Kz` 0.57, `Kd` 0.85: `0.00256 · 0.57 · 0.85 · 12 100 = 15.008 psf`.
pub fn velocity_pressure(equation: &WindEquation) -> Pressure {
    let WindEquation { kz, kzt, kd, ke, .. } = *equation;
    let mph = equation.speed.mph();
    Pressure::from_psf(0.00256 * kz * kzt * kd * ke * mph * mph)
}

/// Pressure equalisation factor of an array that lies parallel to the roof, by the area that one post carries.
///
/// # Formula
///
/// `γ_a = 1.2 − 0.4 · log10 A`, not above 0.8 (10 sq ft and less) nor below 0.4 (100 sq ft and more).
///
/// # Source
///
/// ASCE 7-16, figure 29.4-8: the line between its two ends, from a second hand.
///
/// # Example
///
/// ```
/// use takeoff_core::{screening::area_factor, units::Area};
/// let square_feet = |a: f64| Area::from_mm2(a * 92_903.04);
/// assert!((area_factor(square_feet(20.0)) - 0.6796).abs() < 5e-5); // 1.2 − 0.4 × 1.30103
/// ```
pub fn area_factor(area: Area) -> f64 {
    (1.2 - 0.4 * math::log10(area.square_feet())).clamp(0.4, 0.8)
}
