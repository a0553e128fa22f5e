use super::*;
use std::collections::BTreeSet;

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
        &["3 furlongs", "5 / 8 in", "1e5 in", "7 yd", "5:12", "3 inchs", "3 ft.5 in", "168 mm.", "1_000 mm"],
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
