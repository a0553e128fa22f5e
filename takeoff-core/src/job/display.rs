//! Lengths in findings and in the basis of a number.
use super::Display;
use crate::units::Length;

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
}
