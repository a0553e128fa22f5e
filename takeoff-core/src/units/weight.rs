//! Weights of tiles.
use super::error::UnitError;
use super::quantity::Quantity;

/// One avoirdupois pound in grams.
const POUND: f64 = 453.592_37;
const KILOGRAM: f64 = 1000.0;

const WEIGHT: Quantity<f64> = Quantity {
    expected: "write a weight with its unit, such as `9.6 lb` or `4.3 kg`",
    units: &[("lb", POUND), ("lbs", POUND), ("oz", POUND / 16.0), ("kg", KILOGRAM), ("g", 1.0)],
    range: (0.0, 10_000.0 * KILOGRAM),
    limits: "a weight from 0 to 10 000 kg",
};

/// A weight in grams.
///
/// # Source
///
/// 1 lb = 453.59237 g exactly (international yard and pound agreement, 1959).
///
/// # Example
///
/// ```
/// use takeoff_core::units::Weight;
/// let tile = Weight::parse("10 lb")?;
/// assert_eq!(tile.grams(), 4535.9237);
/// assert_eq!(tile.metric(2), "4.54 kg");
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Weight(f64);

impl Weight {
    /// Reads a number and one of lb (lbs), oz, kg, g, in large or small letters.
    ///
    /// # Errors
    ///
    /// No unit or another, below 0 or above 10 000 kg.
    pub fn parse(text: &str) -> Result<Weight, UnitError> {
        WEIGHT.parse(text).map(Weight)
    }

    /// From grams.
    pub const fn from_grams(grams: f64) -> Weight {
        Weight(grams)
    }

    /// In grams.
    pub const fn grams(self) -> f64 {
        self.0
    }

    /// In pounds with so many decimals, as `9.6 lb`.
    pub fn imperial(self, decimals: usize) -> String {
        format!("{:.decimals$} lb", self.0 / POUND)
    }

    /// In kilograms with so many decimals, as `4.35 kg`.
    pub fn metric(self, decimals: usize) -> String {
        format!("{:.decimals$} kg", self.0 / KILOGRAM)
    }
}
