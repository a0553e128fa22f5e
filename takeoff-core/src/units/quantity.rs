//! Quantities written as one number with one unit, and their ranges.
use super::cursor::Cursor;
use super::error::{OUT_OF_LIMITS, TRAILING_TEXT, UNIT_MISSING, UNIT_UNKNOWN, UnitError, quoted};
use super::number::{self, number};

/// What there is to know of a quantity to read it; `U` is what its units mean, mostly their size.
pub(super) struct Quantity<U: 'static> {
    /// What to write, with examples.
    pub(super) expected: &'static str,
    /// The names of its units, in small letters.
    pub(super) units: &'static [(&'static str, U)],
    /// The least and the greatest value.
    pub(super) range: (f64, f64),
    /// The range in words.
    pub(super) limits: &'static str,
}

impl Quantity<f64> {
    /// Reads `[ "-" ] number unit`.
    pub(super) fn parse(&self, text: &str) -> Result<f64, UnitError> {
        let mut cursor = Cursor::new(text, self.expected);
        let negative = cursor.minus();
        let number = number(&mut cursor)?.to_f64();
        let value = number * self.unit(cursor)?;
        self.within_limits(if negative { 0.0 - value } else { value }, text)
    }
}

impl<U: Copy> Quantity<U> {
    /// The unit that is all of the rest.
    pub(super) fn unit(&self, cursor: Cursor<'_>) -> Result<U, UnitError> {
        let written = cursor.rest().trim();
        let name = written.to_lowercase().replace('.', " ");
        let name = name.split_whitespace().collect::<Vec<_>>().join(" ");
        if let Some(&(_, unit)) = self.units.iter().find(|(known, _)| *known == name) {
            return Ok(unit);
        }
        let whole = quoted(cursor.text);
        let (code, message) = match written.chars().next() {
            None => (UNIT_MISSING, format!("{whole} has no unit")),
            Some(c) if number::begins(c) => {
                (TRAILING_TEXT, format!("{} is left over at the end of {whole}", quoted(written)))
            }
            Some(_) => (UNIT_UNKNOWN, format!("the unit {} in {whole} is not known here", quoted(written))),
        };
        Err(UnitError::new(code, message, self.expected))
    }

    /// The value itself if it is in the range.
    pub(super) fn within_limits(&self, value: f64, text: &str) -> Result<f64, UnitError> {
        let (least, greatest) = self.range;
        if (least..=greatest).contains(&value) {
            return Ok(value);
        }
        let message = format!("{} is not {}", quoted(text), self.limits);
        Err(UnitError::new(OUT_OF_LIMITS, message, self.expected))
    }
}
