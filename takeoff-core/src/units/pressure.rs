//! Pressures of wind and loads on an area.
use super::error::UnitError;
use super::force::POUND_FORCE;
use super::quantity::Quantity;

/// One square foot in square metres.
const SQUARE_FOOT: f64 = 0.092_903_04;
/// One pound-force on a square foot in pascals.
const PSF: f64 = POUND_FORCE / SQUARE_FOOT;

const PRESSURE: Quantity<f64> = Quantity {
    expected: "write a pressure with its unit, such as `24.5 psf` or `1.2 kPa`",
    units: &[
        ("psf", PSF),
        ("lbf/ft2", PSF),
        ("lbf/ft²", PSF),
        ("pa", 1.0),
        ("n/m2", 1.0),
        ("n/m²", 1.0),
        ("kpa", 1e3),
        ("kn/m2", 1e3),
        ("kn/m²", 1e3),
    ],
    range: (0.0, 100e3),
    limits: "a pressure from 0 to 100 kPa (2 088 psf)",
};

/// A pressure in pascals.
///
/// # Source
///
/// 1 psf = 4.4482216152605 N / 0.09290304 m²: both exact (NIST Special Publication 811, appendix B.8, from memory
/// for the place; the numbers follow from the pound, the foot and standard gravity).
///
/// # Example
///
/// ```
/// use takeoff_core::units::Pressure;
/// let wind = Pressure::parse("20 psf")?;
/// assert_eq!(wind.metric(3), "0.958 kPa"); // 20 × 47.88 Pa
/// assert_eq!(wind.imperial(1), "20.0 psf");
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Pressure(f64);

impl Pressure {
    /// Reads a number and one of psf (lbf/ft², lbf/ft2), Pa (N/m², N/m2), kPa (kN/m², kN/m2), in large or small
    /// letters.
    ///
    /// # Errors
    ///
    /// No unit or another, below 0 or above 100 kPa.
    pub fn parse(text: &str) -> Result<Pressure, UnitError> {
        PRESSURE.parse(text).map(Pressure)
    }

    /// From pascals.
    pub const fn from_pa(pa: f64) -> Pressure {
        Pressure(pa)
    }

    /// From pounds-force on a square foot.
    pub const fn from_psf(psf: f64) -> Pressure {
        Pressure(psf * PSF)
    }

    /// In pascals.
    pub const fn pa(self) -> f64 {
        self.0
    }

    /// In pounds-force on a square foot with so many decimals, as `24.5 psf`.
    pub fn imperial(self, decimals: usize) -> String {
        format!("{:.decimals$} psf", self.0 / PSF)
    }

    /// In kilopascals with so many decimals, as `1.173 kPa`.
    pub fn metric(self, decimals: usize) -> String {
        format!("{:.decimals$} kPa", self.0 / 1e3)
    }
}
