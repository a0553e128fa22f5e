use super::*;
use proptest::prelude::*;

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
