use super::*;

/// Slope factors and angles of common pitches: `sqrt(rise² + 12²) / 12`, as printed in carpenters' and
/// roofers' rafter tables (common practice), to the printed digits.
#[test]
#[expect(clippy::approx_constant, reason = "the digits as printed")]
fn slope_factors_are_those_of_rafter_tables() {
    for (rise, factor, degrees) in [
        ("2.5", 1.0215, 11.77),
        ("3", 1.0308, 14.04),
        ("4", 1.0541, 18.43),
        ("5", 1.0833, 22.62),
        ("6", 1.1180, 26.57),
        ("7", 1.1577, 30.26),
        ("8", 1.2019, 33.69),
        ("9", 1.2500, 36.87),
        ("10", 1.3017, 39.81),
        ("12", 1.4142, 45.00),
        ("21", 2.0156, 60.26),
    ] {
        let pitch = Pitch::parse(&format!("{rise}:12")).unwrap();
        assert!((pitch.slope_factor() - factor).abs() <= 0.000_05, "{pitch}");
        assert!((pitch.degrees() - degrees).abs() <= 0.005, "{pitch}");
    }
    // Pythagorean triples leave nothing to round.
    assert_eq!(Pitch::parse("5:12").unwrap().slope_factor(), 13.0 / 12.0);
    assert_eq!(Pitch::parse("9:12").unwrap().slope_factor(), 1.25);
    assert_eq!(Pitch::parse("75 %").unwrap().slope_factor(), 1.25);
}

#[test]
fn pitch_is_shown_as_it_was_given() {
    for (text, shown) in [
        ("5:12", "5:12"),
        (" 2 1/2 : 12 ", "2.5:12"),
        ("2½∶12", "2.5:12"),
        ("22.6°", "22.6 deg"),
        ("22.6 Degrees", "22.6 deg"),
        ("41.7%", "41.7 %"),
        ("0:12", "0:12"),
        ("-0:12", "0:12"),
        ("80 deg", "80 deg"),
    ] {
        let pitch = Pitch::parse(text).unwrap();
        assert_eq!(pitch.to_string(), shown);
        assert_eq!(Pitch::parse(shown).unwrap(), pitch);
    }
    assert_eq!(Pitch::parse("12:12"), Pitch::parse("100 %"));
    assert_eq!(Pitch::parse("5:12"), Pitch::parse("10:24"));
    assert_ne!(Pitch::parse("5:12"), Pitch::parse("5.1:12"));
    assert_eq!(Pitch::from_degrees(30.0).unwrap(), Pitch::parse("30 deg").unwrap());
    for outside in [f64::NAN, f64::INFINITY, -1.0, 80.000_001] {
        assert_eq!(Pitch::from_degrees(outside).unwrap_err().code, "out-of-limits");
    }
}

#[test]
fn azimuth_turns_once() {
    for (text, degrees) in
        [("135 deg", 135.0), ("135°", 135.0), ("360 deg", 0.0), ("-90 degrees", 270.0), ("0°", 0.0)]
    {
        assert_eq!(Azimuth::parse(text).unwrap().degrees(), degrees);
    }
    assert_eq!(Azimuth::parse("-0.000000000000000001 deg").unwrap().degrees(), 0.0);
    assert_eq!(Azimuth::parse("180 deg").unwrap().radians(), std::f64::consts::PI);
}

/// 1 US gal = 231 in³ = 128 fl oz and 1 in = 25.4 mm by definition (NIST Handbook 44, appendix C, from
/// memory for the place; the numbers follow from the definitions alone).
#[test]
fn volumes_follow_from_the_definitions() {
    let mm3 = |text| Volume::parse(text).unwrap().mm3();
    let close = |a: f64, b: f64| assert!((a - b).abs() <= 1e-12 * b, "{a} {b}");
    close(mm3("1 in3"), 25.4 * 25.4 * 25.4);
    close(mm3("1 gal"), mm3("231 in³"));
    close(mm3("1 gal"), mm3("128 fl oz"));
    close(mm3("1 Fl. Oz."), mm3("1.8046875 cu in"));
    close(mm3("0.3 L"), mm3("300 mL"));
    close(mm3("300 ml"), mm3("300 cm3"));
    close(mm3("300 mL"), mm3("300000 mm³"));
    // Cartridges: the two ways to call one differ by 0.44 %.
    for (text, cubic_inches, millilitres) in [
        ("10.1 fl oz", 18.227, 298.7),
        ("300 mL", 18.307, 300.0),
        ("28 fl oz", 50.531, 828.1),
        ("29 fl oz", 52.336, 857.6),
    ] {
        assert!((mm3(text) / 16_387.064 - cubic_inches).abs() <= 0.000_5, "{text}");
        assert!((mm3(text) / 1000.0 - millilitres).abs() <= 0.05, "{text}");
    }
    assert_eq!(Volume::parse("300 mL").unwrap().imperial(1), "10.1 fl oz");
    assert_eq!(Volume::from_mm3(298_692.0).metric(0), "299 mL");
}

/// 1 psf = 47.88026 Pa and 1 mph = 0.44704 m/s (NIST Special Publication 811, appendix B.8, from memory; both follow
/// from the definitions of pound, foot and standard gravity).
#[test]
fn pressures_speeds_and_forces_follow_from_the_definitions() {
    let pa = |text| Pressure::parse(text).unwrap().pa();
    assert!((pa("1 psf") - 47.880_26).abs() < 5e-6);
    assert_eq!(pa("1.2 kPa"), 1200.0);
    assert_eq!(pa("300 N/m²"), pa("0.3 KN/M2"));
    assert_eq!(Pressure::from_psf(16.0), Pressure::parse("16 lbf/ft2").unwrap());
    let m_s = |text| Speed::parse(text).unwrap().m_s();
    assert_eq!(m_s("100 mph"), 44.704);
    assert!((m_s("180 km/h") - 50.0).abs() < 1e-12);
    assert_eq!(m_s("51 m/s"), 51.0);
    assert!((Force::from_lbf(1.0).n() - 0.453_592_37 * 9.806_65).abs() < 1e-15);
    assert_eq!(Force::from_n(10.0).metric(1), "10.0 N");
    for (text, code) in [("24", "unit-missing"), ("24 psi", "unit-unknown"), ("-1 psf", "out-of-limits")] {
        assert_eq!(Pressure::parse(text).unwrap_err().code, code, "{text}");
    }
    for (text, code) in [("115", "unit-missing"), ("115 knots", "unit-unknown"), ("201 m/s", "out-of-limits")]
    {
        assert_eq!(Speed::parse(text).unwrap_err().code, code, "{text}");
    }
}

#[test]
fn weights_and_areas_follow_from_the_definitions() {
    let grams = |text| Weight::parse(text).unwrap().grams();
    assert_eq!(grams("1 lb"), 453.592_37);
    assert_eq!(grams("16 oz"), 453.592_37);
    assert_eq!(grams("4.3 kg"), 4300.0);
    assert_eq!(Weight::parse("9.6 lbs").unwrap().imperial(1), "9.6 lb");
    assert_eq!(Weight::from_grams(4300.0).metric(1), "4.3 kg");
    // 1 ft² = 0.092 903 04 m² exactly (NIST Special Publication 811, appendix B.8, from memory).
    assert_eq!(Area::from_mm2(92_903.04).square_feet(), 1.0);
    assert_eq!(Area::from_mm2(92_903.04).metric(4), "0.0929 m²");
    assert_eq!(Area::from_mm2(Length::FOOT.mm() * Length::INCH.mm()).imperial(3), "0.083 sq ft");
}
