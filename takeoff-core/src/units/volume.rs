//! Volumes of sealant and cement.
use super::error::UnitError;
use super::quantity::Quantity;

/// One cubic inch: 25.4³ mm³.
const CUBIC_INCH: f64 = 16_387.064;
/// One US gallon: 231 cubic inches.
const GALLON: f64 = 3_785_411.784;
/// One US fluid ounce: 1/128 gallon.
const FLUID_OUNCE: f64 = GALLON / 128.0;
const MILLILITRE: f64 = 1e3;
const LITRE: f64 = 1e6;

const VOLUME: Quantity<f64> = Quantity {
    expected: "write a volume with its unit, such as `10.1 fl oz`, `300 mL`, `1 gal` or `36 in3`",
    units: &[
        ("fl oz", FLUID_OUNCE),
        ("gal", GALLON),
        ("gallon", GALLON),
        ("gallons", GALLON),
        ("in3", CUBIC_INCH),
        ("in³", CUBIC_INCH),
        ("cu in", CUBIC_INCH),
        ("ml", MILLILITRE),
        ("cm3", MILLILITRE),
        ("cm³", MILLILITRE),
        ("l", LITRE),
        ("mm3", 1.0),
        ("mm³", 1.0),
    ],
    range: (0.0, 10_000.0 * LITRE),
    limits: "a volume from 0 to 10 000 L",
};

/// A volume in cubic millimetres.
///
/// # Source
///
/// 1 in = 25.4 mm, 1 US gallon = 231 in³ = 128 US fluid ounces: exact by definition.
///
/// # Example
///
/// ```
/// use takeoff_core::units::Volume;
/// let cartridge = Volume::parse("10.1 fl oz")?;
/// assert_eq!(cartridge.metric(1), "298.7 mL"); // 10.1 × 231/128 × 16.387064
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Volume(f64);

impl Volume {
    /// Reads a number and one of fl oz, gal, in3 (in³, cu in), mL, L, cm3 (cm³), mm3 (mm³), in large or
    /// small letters. `oz` alone is refused: it may be a weight.
    ///
    /// # Errors
    ///
    /// No unit or another, below 0 or above 10 000 L.
    pub fn parse(text: &str) -> Result<Volume, UnitError> {
        VOLUME.parse(text).map(Volume)
    }

    /// From cubic millimetres.
    pub const fn from_mm3(mm3: f64) -> Volume {
        Volume(mm3)
    }

    /// In cubic millimetres.
    pub const fn mm3(self) -> f64 {
        self.0
    }

    /// In US fluid ounces.
    pub fn fluid_ounces(self) -> f64 {
        self.0 / FLUID_OUNCE
    }

    /// In millilitres.
    pub fn millilitres(self) -> f64 {
        self.0 / MILLILITRE
    }

    /// In fluid ounces with so many decimals, as `10.1 fl oz`.
    pub fn imperial(self, decimals: usize) -> String {
        format!("{:.decimals$} fl oz", self.fluid_ounces())
    }

    /// In millilitres with so many decimals, as `298.7 mL`.
    pub fn metric(self, decimals: usize) -> String {
        format!("{:.decimals$} mL", self.millilitres())
    }
}
