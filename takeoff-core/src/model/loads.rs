//! What a screening weighs: the job's factors and loads.
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
    /// What uplift counts for.
    pub uplift_factor: f64,
    /// What the dead load counts for.
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
    /// What it is, in words.
    pub what: String,
    /// Its value with its unit, as shown.
    pub value: String,
    /// Its value, in `unit`.
    pub number: f64,
    /// Unit of `number`: `Pa`, `m/s`, or nothing for a factor.
    pub unit: String,
    /// Where a default comes from; `None` where the job file sets it.
    pub source: Option<String>,
}
