//! Speeds of wind.
use super::error::UnitError;
use super::quantity::Quantity;

/// One mile an hour in metres a second: 1609.344 m / 3600 s.
const MPH: f64 = 0.447_04;

const SPEED: Quantity<f64> = Quantity {
    expected: "write a speed with its unit, such as `115 mph` or `51 m/s`",
    units: &[("mph", MPH), ("m/s", 1.0), ("km/h", 1.0 / 3.6)],
    range: (0.0, 200.0),
    limits: "a speed from 0 to 200 m/s (447 mph)",
};

/// A speed in metres a second.
///
/// # Source
///
/// 1 mph = 0.44704 m/s exactly: the mile is 5280 ft of 0.3048 m.
///
/// # Example
///
/// ```
/// use takeoff_core::units::Speed;
/// let wind = Speed::parse("115 mph")?;
/// assert_eq!(wind.metric(2), "51.41 m/s"); // 115 × 0.44704
/// assert_eq!(wind.imperial(0), "115 mph");
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Speed(f64);

impl Speed {
    /// Reads a number and one of mph, m/s, km/h, in large or small letters.
    ///
    /// # Errors
    ///
    /// No unit or another, below 0 or above 200 m/s.
    pub fn parse(text: &str) -> Result<Speed, UnitError> {
        SPEED.parse(text).map(Speed)
    }

    /// From metres a second.
    pub const fn from_m_s(m_s: f64) -> Speed {
        Speed(m_s)
    }

    /// In metres a second.
    pub const fn m_s(self) -> f64 {
        self.0
    }

    /// In miles an hour.
    pub const fn mph(self) -> f64 {
        self.0 / MPH
    }

    /// In miles an hour with so many decimals, as `115 mph`.
    pub fn imperial(self, decimals: usize) -> String {
        format!("{:.decimals$} mph", self.mph())
    }

    /// In metres a second with so many decimals, as `51.4 m/s`.
    pub fn metric(self, decimals: usize) -> String {
        format!("{:.decimals$} m/s", self.0)
    }
}
