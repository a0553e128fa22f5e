//! Rounding, and the decimals of currencies.
use proptest::prelude::*;
use rust_decimal::Decimal;

use crate::units::Currency;

fn rounded(code: &str, amount: &str) -> String {
    Currency::new(code).unwrap().round(amount.parse().unwrap()).to_string()
}

#[test]
fn halves_go_away_from_zero() {
    for (code, amount, expected) in [
        ("USD", "0.005", "0.01"),
        ("USD", "0.0049999999999999999999999999", "0.00"),
        ("USD", "2.675", "2.68"), // 2.67 by way of binary fractions
        ("USD", "1.005", "1.01"), // 1.00 by way of binary fractions
        ("USD", "10", "10.00"),
        ("JPY", "12.5", "13"),
        ("KWD", "0.0125", "0.013"),
    ] {
        assert_eq!(rounded(code, amount), expected, "{amount} {code}");
    }
}

#[test]
fn a_currency_is_three_capital_letters() {
    for code in ["", "US", "usd", "USDT", "US1", "ÄÖÜ"] {
        assert_eq!(Currency::new(code), None, "{code}");
    }
    let rule = Currency::new("JPY").unwrap().rule();
    assert_eq!(rule, "every line is rounded once, half away from zero, to 1 JPY; totals add rounded lines");
}

proptest! {
    /// In whole numbers: the nearest hundredth, half away from zero.
    #[test]
    fn as_in_whole_numbers(millionths in 0_i64..1_000_000_000_000) {
        let rounded = Currency::new("USD").unwrap().round(Decimal::new(millionths, 6)).amount();
        prop_assert_eq!(rounded, Decimal::new((millionths + 5_000) / 10_000, 2));
        prop_assert_eq!(rounded.scale(), 2);
    }
}
