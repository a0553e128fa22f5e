//! Quantities as people read them.
use super::super::quantity::Quantities;
use crate::model::Display::{Imperial, Metric};
use crate::units::Unit;

#[test]
fn both_systems_show_the_same_quantity() {
    let [imperial, metric] = [Imperial, Metric].map(Quantities);
    // 40 1/2 in = 1028.7 mm; 13 1/4 in = 336.55 mm (1 in = 25.4 mm exactly).
    assert_eq!((imperial.length(1028.7), metric.length(1028.7)), ("3 ft 4 1/2 in".into(), "1029 mm".into()));
    assert_eq!(
        (imperial.short_length(336.55), metric.short_length(336.55)),
        ("13 1/4 in".into(), "337 mm".into())
    );
    // 1 sq ft = 0.09290304 m² (NIST Special Publication 811, appendix B.8).
    assert_eq!((imperial.area(92_903.04), metric.area(92_903.04)), ("1.00 sq ft".into(), "0.093 m²".into()));
    // 10.1 fl oz = 298.7 mL (1 US gallon = 231 cubic inches = 128 fl oz).
    assert_eq!(
        (imperial.volume(298_693.0), metric.volume(298_693.0)),
        ("10.1 fl oz".into(), "299 mL".into())
    );
}

#[test]
fn counts_stand_bare() {
    let shown = Quantities(Imperial);
    assert_eq!(shown.amount(24.0, Unit::Each), "24");
    assert_eq!(shown.amount(2.351_848, Unit::Each), "2.35");
    assert_eq!(shown.amount(92_903.04, Unit::Mm2), "1.00 sq ft");
}

#[test]
fn a_range_names_its_unit_once() {
    let lengths = [336.55, 330.2, 333.375];
    assert_eq!(Quantities(Imperial).range(lengths.iter().copied()).as_deref(), Some("13 to 13 1/4 in"));
    assert_eq!(Quantities(Metric).range(lengths.iter().copied()).as_deref(), Some("330 to 337 mm"));
    assert_eq!(Quantities(Metric).range([330.2, 330.3].into_iter()).as_deref(), Some("330 mm"));
    assert_eq!(Quantities(Metric).range([].into_iter()), None);
}
