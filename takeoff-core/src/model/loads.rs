//! Factors and loads of a screening.
use schemars::JsonSchema;
use serde::Serialize;

use super::Wind;
use crate::units::Pressure;

/// The factors and loads of a screening.
#[derive(Clone, Debug, PartialEq)]
pub struct Loads {
    /// Load duration factor, `C_D`.
    pub c_d: f64,
    /// Wet service factor, `C_M`.
    pub c_m: f64,
    /// Temperature factor, `C_t`.
    pub c_t: f64,
    /// Factor of the uplift.
    pub uplift_factor: f64,
    /// Factor of the dead load.
    pub dead_factor: f64,
    /// Square to the roof, on the array's area.
    pub dead_load: Pressure,
    /// The wind.
    pub wind: Wind,
    /// All of these as a report shows them.
    pub inputs: Vec<ScreeningInput>,
}

/// One input of a screening.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ScreeningInput {
    /// Its symbol in the formulas.
    pub symbol: String,
    /// Meaning, in words.
    pub what: String,
    /// Its value with its unit, as shown.
    pub value: String,
    /// Its value, in `unit`.
    pub number: f64,
    /// Unit of `number`: `Pa`, `m/s`, or nothing for a factor.
    pub unit: String,
    /// Source of a default; `None` where the job file sets the value.
    pub source: Option<String>,
}
