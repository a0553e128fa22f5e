//! The units that things are sold by.
use rust_decimal::Decimal;

use super::Unit;

/// A unit of sale: what it measures, and how much of the takeoff's own unit it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measure {
    /// The takeoff's unit of the same dimension.
    pub unit: Unit,
    /// How many of them it is, exactly.
    pub size: Decimal,
}

/// A row a unit: its names, its dimension, and its size.
///
/// 1 in = 25.4 mm, 1 US gallon = 231 in³ = 128 US fluid ounces: exact by definition (NIST Handbook 44, Appendix C).
const MEASURES: &[(&[&str], Unit, &str)] = &[
    (&["each", "ea", "piece", "pieces", "pc", "pcs"], Unit::Each, "1"),
    (&["mm2", "mm²"], Unit::Mm2, "1"),
    (&["m2", "m²", "sq m"], Unit::Mm2, "1000000"),
    (&["sq ft", "ft2", "ft²"], Unit::Mm2, "92903.04"),
    (&["mm"], Unit::Mm, "1"),
    (&["cm"], Unit::Mm, "10"),
    (&["m"], Unit::Mm, "1000"),
    (&["in"], Unit::Mm, "25.4"),
    (&["ft"], Unit::Mm, "304.8"),
    (&["mm3", "mm³"], Unit::Mm3, "1"),
    (&["ml", "cm3", "cm³"], Unit::Mm3, "1000"),
    (&["l"], Unit::Mm3, "1000000"),
    (&["in3", "in³", "cu in"], Unit::Mm3, "16387.064"),
    (&["fl oz"], Unit::Mm3, "29573.5295625"),
    (&["gal"], Unit::Mm3, "3785411.784"),
];

impl Measure {
    /// The unit of a name, in large or small letters.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::units::Measure;
    /// assert_eq!(Measure::of("fl oz").unwrap().size.to_string(), "29573.5295625"); // 231/128 · 25.4³ mm³
    /// assert_eq!(Measure::of("oz"), None); // a weight, or a volume?
    /// ```
    pub fn of(name: &str) -> Option<Measure> {
        let name = name.to_lowercase();
        let name = name.split_whitespace().collect::<Vec<_>>().join(" ");
        let (_, unit, size) = MEASURES.iter().find(|(names, ..)| names.contains(&name.as_str()))?;
        Some(Measure { unit: *unit, size: Decimal::from_str_exact(size).ok()? })
    }

    /// The first name of every unit.
    pub fn names() -> impl Iterator<Item = &'static str> {
        MEASURES.iter().filter_map(|(names, ..)| names.first().copied())
    }
}

/// What a unit measures, in words.
pub(crate) fn dimension(unit: Unit) -> &'static str {
    match unit {
        Unit::Each => "piece",
        Unit::Mm2 => "area",
        Unit::Mm => "length",
        Unit::Mm3 => "volume",
    }
}
