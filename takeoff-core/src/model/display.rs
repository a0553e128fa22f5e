//! Which units reports show.
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::{Force, Length, Pressure, Speed};

/// Which units reports show; it changes no number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Display {
    /// Feet, inches and fractions of an inch.
    #[default]
    Imperial,
    /// Millimetres and metres.
    Metric,
}

impl Display {
    /// A length as one would redo a sum with it: to 1/64 in, or to 1/100 mm.
    ///
    /// ```
    /// use takeoff_core::model::Display;
    /// use takeoff_core::units::Length;
    /// let length = Length::parse("32 1/2 in")?;
    /// assert_eq!(Display::Imperial.length(length), "32 1/2 in");
    /// assert_eq!(Display::Metric.length(length), "825.5 mm");
    /// # Ok::<(), takeoff_core::units::UnitError>(())
    /// ```
    pub fn length(self, length: Length) -> String {
        match self {
            Display::Imperial => length.inches(64),
            Display::Metric => length.metric(2),
        }
    }

    /// A length to the nanometre, for a job file: in inches where those are whole to 1/64 in, else in millimetres.
    ///
    /// ```
    /// use takeoff_core::model::Display;
    /// use takeoff_core::units::Length;
    /// let length = Length::parse("32 1/2 in")?;
    /// assert_eq!(Display::Imperial.exact(length), "32 1/2 in");
    /// assert_eq!(Display::Metric.exact(length), "825.5 mm");
    /// assert_eq!(Display::Imperial.exact(Length::from_nm(825_500_001)), "825.500001 mm");
    /// # Ok::<(), takeoff_core::units::UnitError>(())
    /// ```
    pub fn exact(self, length: Length) -> String {
        match self {
            Display::Imperial if length.nm() % (Length::INCH.nm() / 64) == 0 => length.inches(64),
            _ => length.metric(6),
        }
    }

    /// A pressure to a tenth of a psf, or to 1/100 kPa.
    pub fn pressure(self, pressure: Pressure) -> String {
        match self {
            Display::Imperial => pressure.imperial(1),
            Display::Metric => pressure.metric(2),
        }
    }

    /// A speed to a mile an hour, or to a tenth of a metre a second.
    pub fn speed(self, speed: Speed) -> String {
        match self {
            Display::Imperial => speed.imperial(0),
            Display::Metric => speed.metric(1),
        }
    }

    /// A force to a pound, or to a newton.
    pub fn force(self, force: Force) -> String {
        match self {
            Display::Imperial => force.imperial(0),
            Display::Metric => force.metric(0),
        }
    }
}
