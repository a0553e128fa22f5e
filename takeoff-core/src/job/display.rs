//! Quantities in findings and in the basis of a number.
use super::Display;
use crate::units::{Force, Length, Pressure, Speed};

impl Display {
    /// A length as one would redo a sum with it: to 1/64 in, or to 1/100 mm.
    ///
    /// ```
    /// use takeoff_core::{job::Display, units::Length};
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
