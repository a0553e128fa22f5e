//! Numbers and lines of plain text.
use proptest::prelude::*;

use super::super::plain::{columns, number, printable, shortened, wrap};
use crate::units::Length;

#[test]
fn numbers_have_no_exponent_and_no_minus_zero() {
    assert_eq!(number(0.1 + 0.2), "0.3"); // 0.30000000000000004 has 17 digits
    assert_eq!(number(-0.0), "0");
    assert_eq!(number(1e9), "1000000000");
    assert_eq!(number(-2.5e-7), "-0.00000025");
}

#[test]
fn a_paragraph_hangs_under_its_first_line() {
    let lines = wrap("  - ", "    ", "measure on the roof before you cut", 20);
    assert_eq!(lines, ["  - measure on the", "    roof before you", "    cut"]);
}

#[test]
fn wide_letters_take_two_columns() {
    // Unicode Standard Annex 11: ideographs are wide.
    assert_eq!(columns("屋根 a"), 6);
    assert_eq!(shortened("屋根の南側", 6), "屋根…");
    assert_eq!(wrap("", "", "屋根屋根", 4), ["屋根", "屋根"]);
}

proptest! {
    #[test]
    fn a_length_comes_back_from_its_number(nm in -10_000_000_000_000_i64..=10_000_000_000_000) {
        let mm = Length::from_nm(nm).mm();
        let text = number(mm);
        prop_assert_eq!(text.parse::<f64>().unwrap(), mm);
        prop_assert!(text.chars().filter(char::is_ascii_digit).count() <= 14, "{}", text);
    }

    #[test]
    fn a_number_keeps_fifteen_digits(value in prop::num::f64::NORMAL) {
        let back: f64 = number(value).parse().unwrap();
        prop_assert!((back - value).abs() <= 1e-14 * value.abs(), "{} {}", value, back);
    }

    #[test]
    fn wrapping_keeps_every_word_and_the_width(text in "\\PC{0,200}", width in 12_usize..80) {
        let lines = wrap(" -  ", "    ", &printable(&text), width);
        for line in &lines {
            prop_assert!(columns(line) <= width, "{:?}", line);
        }
        let letters = |text: &str| text.chars().filter(|c| !c.is_whitespace()).collect::<String>();
        let kept = lines.iter().map(|line| letters(line)).collect::<String>();
        prop_assert_eq!(kept, format!("-{}", letters(&printable(&text))));
    }

    #[test]
    fn what_is_printed_drives_no_terminal(text in any::<String>()) {
        prop_assert!(!printable(&text).chars().any(char::is_control));
    }
}
