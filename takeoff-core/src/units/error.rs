//! What is wrong with a written quantity, and how to mend it.
use std::fmt;

/// Why a written quantity was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnitError {
    /// The kind of mistake, one of [`CODES`].
    pub code: &'static str,
    /// What is wrong, the input in backticks.
    pub message: String,
    /// How to mend it.
    pub help: String,
}

impl UnitError {
    pub(super) fn new(code: &'static str, message: String, help: impl Into<String>) -> UnitError {
        UnitError { code, message, help: help.into() }
    }
}

impl fmt::Display for UnitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for UnitError {}

/// Every code that a [`UnitError`] can carry, in alphabetical order.
pub const CODES: &[&str] = &[
    COMMA_IN_NUMBER,
    FEET_AFTER_INCHES,
    FEET_NOT_WHOLE,
    FRACTION_IMPROPER,
    FRACTION_MALFORMED,
    FRACTION_ZERO_DENOMINATOR,
    INCHES_PAST_A_FOOT,
    NOT_WHOLE_NANOMETRES,
    NUMBER_MISSING,
    NUMBER_NOT_FINITE,
    NUMBER_TOO_LONG,
    OUT_OF_LIMITS,
    QUANTITY_EMPTY,
    RUN_ZERO,
    SEVERAL_VALUES,
    TRAILING_TEXT,
    TWO_SYSTEMS,
    UNIT_MISSING,
    UNIT_UNKNOWN,
];

pub(super) const COMMA_IN_NUMBER: &str = "comma-in-number";
pub(super) const FEET_AFTER_INCHES: &str = "feet-after-inches";
pub(super) const FEET_NOT_WHOLE: &str = "feet-not-whole";
pub(super) const FRACTION_IMPROPER: &str = "fraction-improper";
pub(super) const FRACTION_MALFORMED: &str = "fraction-malformed";
pub(super) const FRACTION_ZERO_DENOMINATOR: &str = "fraction-zero-denominator";
pub(super) const INCHES_PAST_A_FOOT: &str = "inches-past-a-foot";
pub(super) const NOT_WHOLE_NANOMETRES: &str = "not-whole-nanometres";
pub(super) const NUMBER_MISSING: &str = "number-missing";
pub(super) const NUMBER_NOT_FINITE: &str = "number-not-finite";
pub(super) const NUMBER_TOO_LONG: &str = "number-too-long";
pub(super) const OUT_OF_LIMITS: &str = "out-of-limits";
pub(super) const QUANTITY_EMPTY: &str = "quantity-empty";
pub(super) const RUN_ZERO: &str = "run-zero";
pub(super) const SEVERAL_VALUES: &str = "several-values";
pub(super) const TRAILING_TEXT: &str = "trailing-text";
pub(super) const TWO_SYSTEMS: &str = "two-systems";
pub(super) const UNIT_MISSING: &str = "unit-missing";
pub(super) const UNIT_UNKNOWN: &str = "unit-unknown";

/// The user's input in backticks: one line, at most 60 characters of it, control characters escaped.
pub(super) fn quoted(text: &str) -> String {
    const MOST: usize = 60;
    let text = text.trim();
    let mut shown: String = text
        .chars()
        .take(MOST)
        .map(|c| match c {
            '`' => "'".to_string(),
            c if c.is_control() => c.escape_debug().to_string(),
            c => c.to_string(),
        })
        .collect();
    if text.chars().nth(MOST).is_some() {
        shown.push('…');
    }
    format!("`{shown}`")
}
