use super::*;

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
