use super::*;
use proptest::prelude::*;
use std::collections::BTreeSet;

fn length(text: &str) -> Length {
    Length::parse(text).unwrap_or_else(|error| panic!("{text}: {error} ({})", error.help))
}

/// `a / b` inches. An inch is 25 400 000 nm exactly: international yard and pound agreement, 1959.
fn inches(a: i64, b: i64) -> Length {
    assert_eq!(a * 25_400_000 % b, 0);
    Length::from_nm(a * 25_400_000 / b)
}

#[test]
fn every_spelling_of_a_length_is_the_same_length() {
    let spellings: &[(Length, &[&str])] = &[
        (
            inches(53, 8),
            &[
                "6 5/8\"",
                "6-5/8 in",
                "6 5/8 in",
                "6⅝ in",
                "6 ⅝\"",
                "6-⅝\"",
                "6.625in",
                "6 5/8 inches",
                "6 10/16 inch",
                "53/8 in",
                "6 5/8 IN",
                "6 5/8 in.",
                "6\u{a0}5/8\u{202f}in",
                "6\u{2009}5⁄8″",
                "6‑5/8”",
                "6–5/8 in",
                "  6 5/8''\t",
                "0 ft 6 5/8 in",
                "168.275 mm",
                "16.8275 cm",
                "0.168275 m",
            ],
        ),
        (
            inches(81, 2),
            &[
                "3'-4 1/2\"",
                "3 ft 4.5 in",
                "40.5in",
                "3'4½\"",
                "3′ 4½″",
                "3’-4 1/2”",
                "3' - 4 1/2\"",
                "3ft4 1/2in",
                "3 feet 4 1/2 inches",
                "3 Foot 4-1/2 In.",
                "3.375 ft",
                "3 3/8 ft",
                "3⅜'",
                "1028.7 mm",
                "102.87 cm",
                "1.0287 M",
            ],
        ),
        (inches(-3, 2), &["-1 1/2 in", "\u{2212}1½\"", "- 1.5 in", "-0' 1 1/2\"", "-38.1 mm"]),
        (Length::from_nm(168_000_000), &["168 mm", "16.8 cm", "0.168 m", ".168m", "168.000 MM"]),
        (Length::from_nm(170_000_000), &["0.17 m", "17 cm", "170mm"]),
        (inches(1, 2), &["½ in", "½\"", "1/2 in", "0 1/2 in", "0.5 in", ".5\"", "½in"]),
        (inches(4, 1), &["1/3 ft", "⅓ ft", "4 in", "0 ft 4 in"]),
        (Length::ZERO, &["0", "-0", "0.0", " 0 ", "0 in", "0 mm", "0'-0\"", "0/8"]),
        (-inches(40, 1), &["-3 ft 4 in", "-40 in", "-3'-4\""]),
    ];
    for (value, texts) in spellings {
        for text in *texts {
            assert_eq!(length(text), *value, "{text}");
        }
    }
}

#[test]
fn grid_of_nanometres_holds_the_steps_of_both_systems() {
    assert_eq!(length("1/64 in").nm(), 396_875);
    assert_eq!(length("0.0001 in").nm(), 2_540);
    assert_eq!(length("0.00001 in").nm(), 254);
    assert_eq!(length("0.01 mm").nm(), 10_000);
    assert_eq!(length("0.000001 mm").nm(), 1);
    // NIST Special Publication 811, appendix B.8: 1 ft = 0.3048 m, 1 yd = 0.9144 m, exactly (from memory).
    assert_eq!(length("1 ft"), length("0.3048 m"));
    assert_eq!(length("3 ft"), length("0.9144 m"));
    assert_eq!(Length::SIXTEENTH.ratio(16, 1), Some(Length::INCH));
}

#[test]
fn limits_are_inside() {
    for text in ["10000 m", "-10000 m", "10000000 mm", "9999999.999999 mm", "32808 ft 4 3/4 in"] {
        length(text);
    }
    for text in ["10000.000000001 m", "-10000.000000001 m", "32809 ft", "999999999999999999 ft"] {
        assert_eq!(Length::parse(text).unwrap_err().code, "out-of-limits", "{text}");
    }
    assert_eq!(Length::checked(10_000_000_000_000), Some(Length::LIMIT));
    assert_eq!(Length::checked(10_000_000_000_001), None);
    assert_eq!(Length::checked(i128::MIN), None);
    assert_eq!(Length::nearest(f64::INFINITY), None);
    assert_eq!(Length::nearest(1.5), Some(Length::from_nm(2)));
    assert_eq!(Length::MM.ratio(1, 0), None);
    assert_eq!(Length::LIMIT.ratio(i64::MAX, 1), None);
    assert_eq!(Length::LIMIT.ratio(i64::MAX, -i64::MAX), Some(-Length::LIMIT));
}

/// Texts that are refused, by code, for each kind of quantity.
const REFUSED: &[(&str, Kind, &[&str])] = &[
    ("quantity-empty", Kind::Length, &["", "  ", "\u{a0}\t"]),
    ("number-missing", Kind::Length, &["in", "abc", "-", "--1 in", "'", "/2 in", "+1 in", "five in", "٣ in"]),
    ("number-not-finite", Kind::Length, &["NaN", "nan in", "inf", "-inf mm", "Infinity m", "∞ m"]),
    ("number-too-long", Kind::Length, &["1234567890123456789 mm", "0.1234567890123456789 m"]),
    ("comma-in-number", Kind::Length, &["0,17 m", "1,234 mm", "1.234,5 mm", ",5 in", "3 ft 4,5 in"]),
    ("fraction-zero-denominator", Kind::Length, &["1/0 in", "6 5/0 in", "3 ft 1/0 in", "0/0"]),
    ("fraction-improper", Kind::Length, &["6 9/8 in", "6-8/8 in", "0 1/1 in"]),
    (
        "fraction-malformed",
        Kind::Length,
        &["4.5 1/2 in", "1.5/2 in", "1/2.5 in", "5/ in", "1.5½ in", "1/-2 in", "1/0.5 in"],
    ),
    (
        "unit-missing",
        Kind::Length,
        &["40", "40.5", "6 5/8", "½", "3'-4 1/2", "6 5 in", "3-4 in", "3 ft 0", "6 - 5/8 in"],
    ),
    (
        "unit-unknown",
        Kind::Length,
        &["3 furlongs", "5 / 8 in", "1e5 in", "7 yd", "5:12", "3 inchs", "1_000 mm"],
    ),
    ("two-systems", Kind::Length, &["3 ft 20 cm", "20 cm 3 in", "1 in 2 mm", "1 m 2 ft"]),
    ("feet-after-inches", Kind::Length, &["4 in 3 ft", "4\" 3'"]),
    ("feet-not-whole", Kind::Length, &["3.5 ft 2 in", "3 1/2' 2\""]),
    ("inches-past-a-foot", Kind::Length, &["3 ft 12 in", "3'-14 1/2\""]),
    ("several-values", Kind::Length, &["1 m 20 cm", "3 in 4 in", "3 ft 4 ft"]),
    (
        "trailing-text",
        Kind::Length,
        &["3 in x", "12 m²", "3 ft 4 in 5", "3 ft -", "6 in ,", "3 ft 4 in 5/8 in", "6 in (about)"],
    ),
    (
        "not-whole-nanometres",
        Kind::Length,
        &["1/128 in", "1/3 in", "⅓ in", "0.000001 in", "1/3 mm", "0.0000001 mm", "168.10000000000002 mm"],
    ),
    (
        "out-of-limits",
        Kind::Length,
        &["10001 m", "-10001 m", "33000 ft", "999999999999999999 0/999999999999999999 in"],
    ),
    ("run-zero", Kind::Pitch, &["5:0", "0:0"]),
    ("out-of-limits", Kind::Pitch, &["80.1 deg", "-1 deg", "-5:12", "600 %", "12:2"]),
    ("unit-missing", Kind::Pitch, &["5", "5/12", "0"]),
    ("number-missing", Kind::Pitch, &["5:", ":12", "5:-12", "steep"]),
    ("trailing-text", Kind::Pitch, &["5:12 pitch", "5:12:3", "20 3 deg"]),
    ("unit-unknown", Kind::Pitch, &["20 rad", "5 in 12", "5 deg 3"]),
    ("comma-in-number", Kind::Pitch, &["22,6 deg", "2,5:12"]),
    ("out-of-limits", Kind::Azimuth, &["361 deg", "-361°"]),
    ("unit-missing", Kind::Azimuth, &["135", "0"]),
    ("number-missing", Kind::Azimuth, &["south"]),
    ("unit-unknown", Kind::Volume, &["10 oz", "3 lb", "1 gal 2"]),
    ("out-of-limits", Kind::Volume, &["-1 mL", "10001 L"]),
    ("unit-missing", Kind::Volume, &["300"]),
    ("unit-unknown", Kind::Weight, &["3 fl oz", "3 stone"]),
    ("out-of-limits", Kind::Weight, &["-9.6 lb", "99999 kg"]),
    ("quantity-empty", Kind::Weight, &[""]),
];

#[derive(Clone, Copy, Debug)]
enum Kind {
    Length,
    Pitch,
    Azimuth,
    Volume,
    Weight,
}

impl Kind {
    const ALL: [Kind; 5] = [Kind::Length, Kind::Pitch, Kind::Azimuth, Kind::Volume, Kind::Weight];

    /// The number kept, whatever the quantity.
    fn parse(self, text: &str) -> Result<f64, UnitError> {
        match self {
            Kind::Length => Length::parse(text).map(Length::mm),
            Kind::Pitch => Pitch::parse(text).map(Pitch::degrees),
            Kind::Azimuth => Azimuth::parse(text).map(Azimuth::degrees),
            Kind::Volume => Volume::parse(text).map(Volume::mm3),
            Kind::Weight => Weight::parse(text).map(Weight::grams),
        }
    }
}

#[test]
fn each_mistake_has_its_own_code() {
    for (code, kind, texts) in REFUSED {
        for text in *texts {
            match kind.parse(text) {
                Ok(value) => panic!("{kind:?} `{text}` was read as {value}, not refused as {code}"),
                Err(error) => assert_eq!(error.code, *code, "{kind:?} `{text}`: {error}"),
            }
        }
    }
}

#[test]
fn each_code_has_a_case() {
    let cases: BTreeSet<&str> = REFUSED.iter().map(|(code, ..)| *code).collect();
    assert_eq!(cases, CODES.iter().copied().collect());
    assert!(CODES.is_sorted_by(|a, b| a < b), "codes are listed once, in order");
}

#[test]
fn errors_quote_the_input_and_say_what_to_write() {
    for (_, kind, texts) in REFUSED {
        for text in *texts {
            let error = kind.parse(text).unwrap_err();
            for words in [&error.message, &error.help] {
                assert!(words.starts_with(|c: char| c.is_lowercase() || c == '`'), "{words}");
                assert!(!words.ends_with('.'), "{words}");
            }
            if !text.trim().is_empty() {
                assert!(error.message.contains('`'), "{}", error.message);
            }
        }
    }
    let message = |text| Length::parse(text).unwrap_err().message;
    assert_eq!(message("3'-4 1/2"), "`4 1/2` in `3'-4 1/2` has no unit");
    assert_eq!(message("40"), "`40` has no unit");
    assert_eq!(message("3 furlongs"), "the unit `furlongs` in `3 furlongs` is not a unit of length");
    assert_eq!(message("3’ 20 cm"), "`3’ 20 cm` mixes feet and inches with metric units");
    assert_eq!(message("a`\n\u{1b}[31m"), "`a'\\n\\u{1b}[31m` has no number where one is expected");
    assert!(message(&"9".repeat(1_000_000)).len() < 300);
}

#[test]
fn lengths_are_shown_reduced_and_rounded_half_away_from_zero() {
    for (nm, denominator, feet_and_inches, only_inches) in [
        (inches(81, 2), 16, "3 ft 4 1/2 in", "40 1/2 in"),
        (inches(53, 8), 16, "6 5/8 in", "6 5/8 in"),
        (inches(53, 8), 8, "6 5/8 in", "6 5/8 in"),
        (inches(53, 8), 4, "6 3/4 in", "6 3/4 in"),
        (inches(53, 8), 0, "7 in", "7 in"),
        (inches(-53, 8), 4, "-6 3/4 in", "-6 3/4 in"),
        (inches(1, 64), 16, "0 in", "0 in"),
        (inches(-1, 64), 16, "0 in", "0 in"),
        (inches(1, 32), 16, "1/16 in", "1/16 in"),
        (inches(-1, 32), 16, "-1/16 in", "-1/16 in"),
        (inches(383, 32), 16, "1 ft", "12 in"),
        (inches(48, 1), 16, "4 ft", "48 in"),
        (inches(97, 2), 2, "4 ft 1/2 in", "48 1/2 in"),
        (Length::ZERO, 16, "0 in", "0 in"),
    ] {
        assert_eq!(nm.imperial(denominator), feet_and_inches);
        assert_eq!(nm.inches(denominator), only_inches);
    }
    for (nm, decimals, shown) in [
        (168_000_000, 0, "168 mm"),
        (168_275_000, 0, "168 mm"),
        (168_500_000, 0, "169 mm"),
        (-168_500_000, 0, "-169 mm"),
        (-400_000, 0, "0 mm"),
        (168_250_000, 1, "168.3 mm"),
        (100_000_000, 3, "100 mm"),
        (1, 6, "0.000001 mm"),
        (-1_500_000, 9, "-1.5 mm"),
    ] {
        assert_eq!(Length::from_nm(nm).metric(decimals), shown);
    }
}

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

fn any_length() -> impl Strategy<Value = Length> {
    prop_oneof![
        (-10_000_000_000_000..=10_000_000_000_000_i64).prop_map(Length::from_nm),
        (-5_000_000_000..=5_000_000_000_i64).prop_map(Length::from_nm),
        (-100_000..=100_000_i64).prop_map(|n| Length::from_nm(n * 396_875)),
    ]
}

/// Text of the characters that quantities are made of, so that most of it is nearly right.
fn nearly() -> impl Strategy<Value = String> {
    let word = prop::sample::select(vec![
        "0",
        "1",
        "12",
        "6",
        "5/8",
        "/",
        ".",
        ",",
        "-",
        "−",
        " ",
        "\u{a0}",
        "'",
        "″",
        "’",
        "\"",
        "½",
        "in",
        "ft",
        "mm",
        "m",
        "cm",
        "feet",
        ":",
        "°",
        "%",
        "deg",
        "fl oz",
        "gal",
        "lb",
        "kg",
        "e9",
        "99999999999999999",
        "nan",
        "٣",
        "\u{0}",
        "🏠",
    ]);
    prop::collection::vec(word, 0..9).prop_map(|words| words.concat())
}

proptest! {
    #[test]
    fn exact_metric_is_read_back(length in any_length()) {
        prop_assert_eq!(Length::parse(&length.metric(6)), Ok(length));
    }

    #[test]
    fn imperial_is_read_back_as_what_was_rounded(length in any_length(), power in 0..7_u32) {
        let denominator = 1 << power;
        let rounded = length.round_to(Length::from_nm(25_400_000 >> power));
        prop_assume!(rounded.abs() <= Length::LIMIT);
        prop_assert_eq!(Length::parse(&length.imperial(denominator)), Ok(rounded));
        prop_assert_eq!(Length::parse(&length.inches(denominator)), Ok(rounded));
    }

    #[test]
    fn whole_millimetres_are_read_back_as_what_was_rounded(length in any_length()) {
        prop_assert_eq!(Length::parse(&length.metric(0)), Ok(length.round_to(Length::MM)));
    }

    #[test]
    fn rounding_stays_within_half_a_step(length in any_length(), step in 1..1_000_000_000_i64) {
        let rounded = length.round_to(Length::from_nm(step));
        prop_assert_eq!(rounded.nm() % step, 0);
        let off = (rounded - length).abs().nm();
        prop_assert!(2 * off <= step);
        prop_assert!(2 * off < step || rounded.abs() > length.abs(), "half is rounded away from zero");
        prop_assert_eq!(rounded.round_to(Length::from_nm(-step)), rounded);
        prop_assert_eq!((-length).round_to(Length::from_nm(step)), -rounded);
    }

    #[test]
    fn ratio_is_the_nearest_and_odd(length in any_length(), top in 0..1000_i64, over in 1000..100_000_i64) {
        let part = length.ratio(top, over).unwrap();
        let off = i128::from(part.nm()) * i128::from(over) - i128::from(length.nm()) * i128::from(top);
        prop_assert!(2 * off.abs() <= i128::from(over));
        prop_assert_eq!(length.ratio(-top, over), Some(-part));
        prop_assert_eq!(length.ratio(top, -over), Some(-part));
    }

    #[test]
    fn feet_and_inches_are_spelled_in_many_ways(feet in 0..9000_i64, sixty_fourths in 0..768_i64, negative: bool) {
        let (whole, part) = (sixty_fourths / 64, sixty_fourths % 64);
        let total = inches(feet * 768 + sixty_fourths, 64);
        let value = if negative { -total } else { total };
        let sign = if negative { "-" } else { "" };
        let nm = total.nm();
        for text in [
            format!("{sign}{feet} ft {whole} {part}/64 in"),
            format!("{sign}{feet}'-{whole}-{part}/64\""),
            format!("{sign}{feet}′ {whole} {part}⁄64″"),
            format!("{sign}{feet}ft{sixty_fourths}/64in"),
            format!("{sign}{} {part}/64 inches", feet * 12 + whole),
            format!("{sign}{}/64 in", feet * 768 + sixty_fourths),
            format!("{sign}{}.{:06} mm", nm / 1_000_000, nm % 1_000_000),
            format!("{sign}{}.{:09} m", nm / 1_000_000_000, nm % 1_000_000_000),
        ] {
            prop_assert_eq!(Length::parse(&text), Ok(value), "{}", text);
        }
    }

    #[test]
    fn pitch_ratios_scale(rise in 0..60_u32, times in 1..50_u32) {
        let pitch = Pitch::parse(&format!("{rise}:12")).unwrap();
        prop_assert_eq!(Pitch::parse(&format!("{}:{}", rise * times, 12 * times)).unwrap(), pitch);
        prop_assert!((pitch.sin().powi(2) + pitch.cos().powi(2) - 1.0).abs() < 1e-15);
        prop_assert!((pitch.cos() * pitch.slope_factor() - 1.0).abs() < 1e-15);
        let turned = Pitch::from_degrees(pitch.degrees()).unwrap();
        prop_assert!((turned.tan() - pitch.tan()).abs() <= 1e-14 * (1.0 + pitch.tan().powi(2)));
    }

    #[test]
    fn any_text_gives_a_value_or_a_known_error(text in prop_oneof![nearly(), any::<String>()]) {
        for kind in Kind::ALL {
            match kind.parse(&text) {
                Ok(value) => prop_assert!(value.is_finite()),
                Err(error) => prop_assert!(CODES.contains(&error.code)),
            }
        }
    }
}
