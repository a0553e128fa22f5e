//! Numbers as written on site, read exactly.
use super::cursor::Cursor;
use super::error::{
    COMMA_IN_NUMBER, FRACTION_IMPROPER, FRACTION_MALFORMED, FRACTION_ZERO_DENOMINATOR, NUMBER_MISSING,
    NUMBER_NOT_FINITE, NUMBER_TOO_LONG, QUANTITY_EMPTY, UnitError, quoted,
};

/// The most digits of a whole number, and of a decimal number on either side of its point: with so many
/// no product here reaches the end of `i128`.
const MOST_DIGITS: usize = 18;

/// A number not below zero, in lowest terms: `over` is above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Ratio {
    pub(super) top: i128,
    pub(super) over: i128,
}

impl Ratio {
    /// In lowest terms; `over` must be above zero.
    fn new(top: i128, over: i128) -> Ratio {
        let divisor = gcd(top, over).max(1);
        Ratio { top: top / divisor, over: over / divisor }
    }

    pub(super) fn is_whole(self) -> bool {
        self.over == 1
    }

    /// The nearest `f64`; within one unit of its last place when written with more than 15 digits.
    pub(super) fn to_f64(self) -> f64 {
        self.top as f64 / self.over as f64
    }
}

/// The greatest common divisor of two whole numbers not below zero.
pub(super) fn gcd(a: i128, b: i128) -> i128 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// Whether a number can begin with this character.
pub(super) fn begins(c: char) -> bool {
    c.is_ascii_digit() || c == '.' || vulgar(c).is_some()
}

/// Reads a number:
///
/// ```text
/// number   = decimal | fraction | digits joint fraction
/// decimal  = digits [ "." digits ] | "." digits
/// fraction = digits "/" digits | "½" | "⅝" | ...
/// joint    = { space } | "-"
/// ```
///
/// A fraction after a whole number is below one: `6 9/8` is refused, `9/8` is not.
pub(super) fn number(cursor: &mut Cursor<'_>) -> Result<Ratio, UnitError> {
    let start = *cursor;
    if let Some(fraction) = fraction(cursor)? {
        return Ok(fraction);
    }
    let whole = digits(cursor)?;
    let decimals = decimals(cursor)?;
    if cursor.peek() == Some(',') {
        let message = format!("{} has a comma in its number", quoted(cursor.text));
        let help = "write a point before the decimals, as in `0.17 m`, and nothing between thousands";
        return Err(UnitError::new(COMMA_IN_NUMBER, message, help));
    }
    let Some(whole) = whole.or(decimals.map(|_| 0)) else { return Err(no_number(start)) };

    let mut ahead = *cursor;
    if !ahead.eat('-') {
        ahead.skip_spaces();
    }
    let joined = fraction(&mut ahead)?;
    if joined.is_some() {
        *cursor = ahead;
    }
    match (decimals, joined) {
        (None, None) => Ok(Ratio::new(whole, 1)),
        (Some((part, scale)), None) if cursor.peek() != Some('/') => {
            Ok(Ratio::new(whole * scale + part, scale))
        }
        (None, Some(part)) if part.top < part.over => Ok(Ratio::new(whole * part.over + part.top, part.over)),
        (None, Some(_)) => {
            let message = format!("the fraction in {} is not below one", quoted(cursor.since(start)));
            let help = "after a whole number write a fraction below one, as in `7 1/8 in`";
            Err(UnitError::new(FRACTION_IMPROPER, message, help))
        }
        (Some(_), _) => Err(malformed(*cursor)),
    }
}

/// Reads digits, if there are any.
fn digits(cursor: &mut Cursor<'_>) -> Result<Option<i128>, UnitError> {
    let written = cursor.take_while(|c| c.is_ascii_digit());
    if written.is_empty() {
        return Ok(None);
    }
    // What does not parse is longer still.
    match written.parse() {
        Ok(value) if written.len() <= MOST_DIGITS => Ok(Some(value)),
        _ => Err(too_long(*cursor)),
    }
}

/// Reads a point and the digits after it, if both are there: the digits and the power of ten under them.
fn decimals(cursor: &mut Cursor<'_>) -> Result<Option<(i128, i128)>, UnitError> {
    let mut ahead = *cursor;
    if !ahead.eat('.') {
        return Ok(None);
    }
    let start = ahead;
    let Some(part) = digits(&mut ahead)? else { return Ok(None) };
    let count = ahead.since(start).len() as u32;
    *cursor = ahead;
    Ok(Some((part, 10_i128.pow(count))))
}

/// Reads a fraction, if there is one.
fn fraction(cursor: &mut Cursor<'_>) -> Result<Option<Ratio>, UnitError> {
    let mut ahead = *cursor;
    if let Some((top, over)) = ahead.peek().and_then(vulgar) {
        ahead.next();
        *cursor = ahead;
        return Ok(Some(Ratio::new(top, over)));
    }
    let start = ahead;
    // A number too long to read is no fraction here: it is reported where the number is read.
    let Ok(Some(top)) = digits(&mut ahead) else { return Ok(None) };
    if !ahead.eat('/') {
        return Ok(None);
    }
    let over = digits(&mut ahead)?;
    let fraction = ahead.since(start);
    *cursor = ahead;
    match over {
        Some(_) if decimals(&mut ahead)?.is_some() => Err(malformed(*cursor)),
        Some(0) => {
            let message = format!("{} divides by zero", quoted(fraction));
            let help = "write a whole number above zero under the line, as in `5/8 in`";
            Err(UnitError::new(FRACTION_ZERO_DENOMINATOR, message, help))
        }
        Some(over) => Ok(Some(Ratio::new(top, over))),
        None => Err(malformed(*cursor)),
    }
}

fn too_long(cursor: Cursor<'_>) -> UnitError {
    let message = format!("{} has a number of more than {MOST_DIGITS} digits", quoted(cursor.text));
    UnitError::new(NUMBER_TOO_LONG, message, "write fewer digits")
}

fn malformed(cursor: Cursor<'_>) -> UnitError {
    let message = format!("{} has a fraction that is not one whole number over another", quoted(cursor.text));
    UnitError::new(FRACTION_MALFORMED, message, "write it as `6 5/8`, or with decimals as `6.625`")
}

/// There is no number where one is expected.
fn no_number(cursor: Cursor<'_>) -> UnitError {
    let whole = quoted(cursor.text);
    let mut ahead = cursor;
    let word = ahead.take_while(|c| c.is_alphabetic() || c == '∞').to_lowercase();
    let (code, message) = if cursor.text.trim().is_empty() {
        (QUANTITY_EMPTY, "nothing is written here".to_string())
    } else if ["nan", "inf", "infinity", "∞"].contains(&word.as_str()) {
        (NUMBER_NOT_FINITE, format!("{whole} is not a finite number"))
    } else {
        (NUMBER_MISSING, format!("{whole} has no number where one is expected"))
    };
    UnitError::new(code, message, cursor.expected)
}

/// The numerator and denominator of a one-character fraction.
fn vulgar(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅒' => (1, 10),
        _ => return None,
    })
}
