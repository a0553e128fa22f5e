//! Wind as a job gives it.
use crate::units::{Pressure, Speed};

/// Wind as pressure or as inputs of the equation.
#[derive(Clone, Debug, PartialEq)]
pub enum Wind {
    /// Uplift on the array, square to the roof, before the load combination.
    Pressure(Pressure),
    /// The published equation.
    Equation(WindEquation),
}

/// The published equation for arrays that lie parallel to the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct WindEquation {
    /// Basic wind speed, `V`.
    pub speed: Speed,
    /// Velocity pressure exposure coefficient at the mean height of the roof.
    pub kz: f64,
    /// Topographic factor.
    pub kzt: f64,
    /// Directionality factor.
    pub kd: f64,
    /// Ground elevation factor.
    pub ke: f64,
    /// External pressure coefficient of the roof's zone, below 0 for suction.
    pub gcp: f64,
    /// Array edge factor.
    pub gamma_e: f64,
    /// Pressure equalisation factor; `None` takes it from each post's area.
    pub gamma_a: Option<f64>,
    /// Not less than this.
    pub least: Pressure,
}
