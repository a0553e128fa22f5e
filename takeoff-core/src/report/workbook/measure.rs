//! Measures as sheets show them: bare numbers whose unit stands in the column's head or beside them.
use crate::model::Display;
use crate::units::Unit;

/// The head of a column of lengths: `from nose (in)`.
pub(super) fn in_units(what: &str, display: Display) -> String {
    match display {
        Display::Imperial => format!("{what} (in)"),
        Display::Metric => format!("{what} (mm)"),
    }
}

/// A length for reading: in inches to the nearest sixteenth, or in whole millimetres.
pub(super) fn length(mm: f64, display: Display) -> f64 {
    // Adding zero turns −0 into 0.
    match display {
        Display::Imperial => (mm / 25.4 * 16.0).round() / 16.0 + 0.0,
        Display::Metric => mm.round() + 0.0,
    }
}

/// The unit in which a sheet shows a material, and how much of the takeoff's unit it is.
///
/// 1 US fluid ounce is 231/128 in³, 29 573.5295625 mm³.
pub(super) fn unit(unit: Unit, display: Display) -> (&'static str, f64) {
    match (unit, display) {
        (Unit::Each, _) => ("each", 1.0),
        (Unit::Mm2, Display::Imperial) => ("sq ft", 304.8 * 304.8),
        (Unit::Mm2, Display::Metric) => ("m²", 1e6),
        (Unit::Mm, Display::Imperial) => ("ft", 304.8),
        (Unit::Mm, Display::Metric) => ("m", 1e3),
        (Unit::Mm3, Display::Imperial) => ("fl oz", 29_573.529_562_5),
        (Unit::Mm3, Display::Metric) => ("mL", 1e3),
    }
}
