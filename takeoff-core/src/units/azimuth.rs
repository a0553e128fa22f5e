//! A direction on the ground.
use super::error::UnitError;
use super::quantity::Quantity;

const AZIMUTH: Quantity<f64> = Quantity {
    expected: "write an azimuth in degrees clockwise from north, such as `135 deg` or `135°`",
    units: &[("deg", 1.0), ("degree", 1.0), ("degrees", 1.0), ("°", 1.0)],
    range: (-360.0, 360.0),
    limits: "an azimuth from -360 to 360 degrees",
};

/// A direction in plan, in degrees clockwise from north, from 0 up to but not including 360.
///
/// # Example
///
/// ```
/// use takeoff_core::units::Azimuth;
/// assert_eq!(Azimuth::parse("135°")?.degrees(), 135.0); // south-east
/// assert_eq!(Azimuth::parse("-90 deg")?.degrees(), 270.0); // west
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Azimuth(f64);

impl Azimuth {
    /// Reads `[ "-" ] number ( "deg" | "degree" | "degrees" | "°" )`.
    ///
    /// # Errors
    ///
    /// No unit or another, or beyond a full turn either way.
    pub fn parse(text: &str) -> Result<Azimuth, UnitError> {
        let turned = AZIMUTH.parse(text)?.rem_euclid(360.0);
        // The remainder of a tiny negative angle rounds up to the full turn.
        Ok(Azimuth(if turned < 360.0 { turned } else { 0.0 }))
    }

    /// In degrees clockwise from north.
    pub fn degrees(self) -> f64 {
        self.0
    }

    /// In radians clockwise from north.
    pub fn radians(self) -> f64 {
        self.0.to_radians()
    }
}
