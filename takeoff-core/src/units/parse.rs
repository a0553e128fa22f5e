//! Reading a length.
use super::cursor::Cursor;
use super::error::{
    FEET_AFTER_INCHES, FEET_NOT_WHOLE, INCHES_PAST_A_FOOT, NOT_WHOLE_NANOMETRES, OUT_OF_LIMITS,
    SEVERAL_VALUES, TWO_SYSTEMS, UNIT_MISSING, UNIT_UNKNOWN, UnitError, quoted,
};
use super::length::Length;
use super::number::{self, Ratio};

const EXPECTED: &str = "write a length with its unit, such as `6 5/8 in`, `3 ft 4 1/2 in` or `168 mm`";

impl Length {
    /// Reads a length as it is written on drawings, tapes and order sheets. The result is exact: nothing
    /// passes through floating point.
    ///
    /// # Grammar
    ///
    /// Spaces may stand between any two parts of `length` and `value`, and at both ends.
    ///
    /// ```text
    /// length   = [ "-" ] ( zero | value )
    /// zero     = number                              (that is 0: nothing else may go without a unit)
    /// value    = number metric
    ///          | number inch
    ///          | number foot
    ///          | number foot [ "-" ] number inch     (whole feet, inches below 12)
    /// metric   = "mm" | "cm" | "m"
    /// inch     = "in" | "in." | "inch" | "inches" | '"' | "''"
    /// foot     = "ft" | "ft." | "foot" | "feet" | "'"
    ///
    /// number   = decimal | fraction | digits joint fraction
    /// decimal  = digits [ "." digits ] | "." digits
    /// fraction = digits "/" digits | "½" | "⅝" | ...
    /// joint    = { space } | "-"                     (the fraction after it below 1)
    /// digits   = one to eighteen of "0" to "9"
    /// ```
    ///
    /// The sign holds for the whole length: `-3 ft 4 in` is −40 in. Letters may be large or small.
    /// Typographic forms are read as the plain ones: primes and curly quotes (′ ″ ’ ”), hyphens, dashes and
    /// minus (‐ – −), the fraction slash (⁄), and all spaces (non-breaking, thin, tab).
    ///
    /// # Errors
    ///
    /// What can be read in two ways is refused: a bare number, a comma in a number, two systems in one
    /// value, inches of a foot or more after feet, a fraction of one or more after a whole number. So is
    /// what is not a whole number of nanometres (`1/128 in`, `1/3 in`) or beyond ±[`Length::LIMIT`].
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::units::Length;
    /// let written = ["40 1/2 in", "40.5in", "3'-4 1/2\"", "3 ft 4.5 in", "3′ 4½″", "1028.7 mm", "1.0287 m"];
    /// for text in written {
    ///     assert_eq!(Length::parse(text)?, Length::from_nm(1_028_700_000)); // 40.5 × 25.4 mm
    /// }
    /// assert_eq!(Length::parse("40").unwrap_err().code, "unit-missing");
    /// assert_eq!(Length::parse("0,17 m").unwrap_err().code, "comma-in-number");
    /// # Ok::<(), takeoff_core::units::UnitError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Length, UnitError> {
        let mut cursor = Cursor::new(text, EXPECTED);
        let negative = cursor.minus();
        let first = Part::read(&mut cursor)?;
        let mut ahead = cursor;
        ahead.minus();
        let second = match ahead.peek() {
            Some(c) if number::begins(c) => {
                cursor = ahead;
                Some(Part::read(&mut cursor)?)
            }
            _ => None,
        };
        cursor.end()?;
        let nm = match second {
            None => first.nm(text)?,
            Some(second) => feet_and_inches(first, second, text)?,
        };
        Length::checked(if negative { -nm } else { nm }).ok_or_else(|| {
            let message = format!("{} is not within 10 km of zero", quoted(text));
            UnitError::new(OUT_OF_LIMITS, message, "write a length from -10 km to 10 km (32 808 ft)")
        })
    }
}

/// A unit of length.
#[derive(Clone, Copy, PartialEq)]
enum Unit {
    Foot,
    Inch,
    Metre,
    Centimetre,
    Millimetre,
}

impl Unit {
    fn named(name: &str) -> Option<Unit> {
        Some(match name.to_lowercase().as_str() {
            "'" | "ft" | "ft." | "foot" | "feet" => Unit::Foot,
            "\"" | "''" | "in" | "in." | "inch" | "inches" => Unit::Inch,
            "m" => Unit::Metre,
            "cm" => Unit::Centimetre,
            "mm" => Unit::Millimetre,
            _ => return None,
        })
    }

    fn length(self) -> Length {
        match self {
            Unit::Foot => Length::FOOT,
            Unit::Inch => Length::INCH,
            Unit::Metre => Length::from_nm(1_000_000_000),
            Unit::Centimetre => Length::from_nm(10_000_000),
            Unit::Millimetre => Length::MM,
        }
    }

    fn is_metric(self) -> bool {
        !matches!(self, Unit::Foot | Unit::Inch)
    }

    /// Reads a unit; none at the end and before what can only be another number.
    fn read(cursor: &mut Cursor<'_>) -> Result<Option<Unit>, UnitError> {
        let mut ahead = *cursor;
        ahead.skip_spaces();
        let name = match ahead.peek() {
            None | Some('-') => return Ok(None),
            Some(c) if number::begins(c) => return Ok(None),
            Some('\'') => {
                ahead.next();
                if ahead.eat('\'') { "''" } else { "'" }
            }
            Some('"') => {
                ahead.next();
                "\""
            }
            Some(c) if c.is_alphabetic() => {
                let start = ahead;
                ahead.take_while(char::is_alphabetic);
                if ahead.eat('.') {
                    // In `3 ft.5 in` the point may end the unit or begin the number: no such unit.
                    ahead.take_while(|c| c.is_ascii_digit());
                }
                ahead.since(start)
            }
            Some(_) => ahead.take_while(|c| c != ' '),
        };
        let Some(unit) = Unit::named(name) else {
            let message =
                format!("the unit {} in {} is not a unit of length", quoted(name), quoted(cursor.text));
            let help = "the units of length are ft, in, m, cm and mm";
            return Err(UnitError::new(UNIT_UNKNOWN, message, help));
        };
        *cursor = ahead;
        Ok(Some(unit))
    }
}

/// A number and the unit written after it.
struct Part<'a> {
    number: Ratio,
    unit: Option<Unit>,
    text: &'a str,
}

impl<'a> Part<'a> {
    fn read(cursor: &mut Cursor<'a>) -> Result<Part<'a>, UnitError> {
        let start = *cursor;
        let number = number::number(cursor)?;
        let unit = Unit::read(cursor)?;
        Ok(Part { number, unit, text: cursor.since(start) })
    }

    /// This part alone, in nanometres.
    fn nm(&self, text: &str) -> Result<i128, UnitError> {
        match self.unit {
            None if self.number.top == 0 => Ok(0),
            None => Err(self.without_unit(text)),
            Some(unit) => nanometres(self.number, unit, text),
        }
    }

    fn without_unit(&self, text: &str) -> UnitError {
        let message = if self.text == text.trim() {
            format!("{} has no unit", quoted(text))
        } else {
            format!("{} in {} has no unit", quoted(self.text), quoted(text))
        };
        UnitError::new(UNIT_MISSING, message, EXPECTED)
    }
}

/// Feet and inches, the only value of two parts.
fn feet_and_inches(first: Part<'_>, second: Part<'_>, text: &str) -> Result<i128, UnitError> {
    let shown = quoted(text);
    let refuse = |code, message, help: &str| Err(UnitError::new(code, message, help));
    let (Some(one), Some(two)) = (first.unit, second.unit) else {
        let bare = if first.unit.is_none() { first } else { second };
        return Err(bare.without_unit(text));
    };
    if one.is_metric() != two.is_metric() {
        let message = format!("{shown} mixes feet and inches with metric units");
        return refuse(TWO_SYSTEMS, message, "write the whole length in one of the two");
    }
    match (one, two) {
        (Unit::Foot, Unit::Inch) if !first.number.is_whole() => {
            let message = format!("{shown} has a part of a foot before inches");
            refuse(FEET_NOT_WHOLE, message, "write whole feet and the rest in inches, as in `3 ft 6 in`")
        }
        (Unit::Foot, Unit::Inch) if second.number.top >= 12 * second.number.over => {
            let message = format!("{shown} has a foot or more of inches after its feet");
            refuse(
                INCHES_PAST_A_FOOT,
                message,
                "write fewer than 12 inches after feet, or the whole in inches",
            )
        }
        (Unit::Foot, Unit::Inch) => {
            let feet = nanometres(first.number, one, text)?;
            let inches = nanometres(second.number, two, text)?;
            Ok(feet + inches)
        }
        (Unit::Inch, Unit::Foot) => {
            let message = format!("{shown} has feet after inches");
            refuse(FEET_AFTER_INCHES, message, "write the feet first, as in `3 ft 4 1/2 in`")
        }
        _ => {
            let message = format!("{shown} is two lengths");
            refuse(SEVERAL_VALUES, message, "write one number with one unit, or feet followed by inches")
        }
    }
}

/// Exactly `number` units, in nanometres.
fn nanometres(number: Ratio, unit: Unit, text: &str) -> Result<i128, UnitError> {
    let unit = i128::from(unit.length().nm());
    if unit % number.over != 0 {
        let message = format!("{} is not a whole number of nanometres", quoted(text));
        let help = "the finest steps are 1/64 in, 0.00001 in and 0.000001 mm: write the nearest of them";
        return Err(UnitError::new(NOT_WHOLE_NANOMETRES, message, help));
    }
    // Below 10²⁸, since a number has at most 18 digits before its point.
    Ok(number.top * (unit / number.over))
}
