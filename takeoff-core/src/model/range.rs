//! Ranges of lengths, a row per kind.
use super::judge::quoted;
use crate::units::Length;

/// Least and greatest sensible value of a kind of length.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Range {
    /// The range in words.
    pub(crate) words: &'static str,
    least: i64,
    greatest: i64,
}

const MM: i64 = 1_000_000;
const METRE: i64 = 1_000 * MM;
const KM: i64 = 1_000 * METRE;

impl Range {
    /// Place of something, from the slope's origin.
    pub(crate) const POSITION: Range = Range::new("within 10 km", -10 * KM, 10 * KM);
    /// Distance between two things on the roof.
    pub(crate) const DISTANCE: Range = Range::new("0 or more, at most 10 km", 0, 10 * KM);
    /// Length of a roll or a row.
    pub(crate) const RUN: Range = Range::new("above 0, at most 10 km", 1, 10 * KM);
    /// Size of a part.
    pub(crate) const SIZE: Range = Range::new("above 0, at most 10 m", 1, 10 * METRE);
    /// Gap or lap between parts.
    pub(crate) const GAP: Range = Range::new("0 or more, at most 10 m", 0, 10 * METRE);
    /// A tile's length, width and cover width.
    pub(crate) const TILE_SIZE: Range = Range::new("from 10 mm to 10 m", 10 * MM, 10 * METRE);

    const fn new(words: &'static str, least: i64, greatest: i64) -> Range {
        Range { words, least, greatest }
    }

    /// Whether a length is in the range, its ends included.
    pub(crate) fn contains(&self, length: Length) -> bool {
        (self.least..=self.greatest).contains(&length.nm())
    }

    /// Message and help about a value outside the range; `shown` is the value in backticks.
    pub(crate) fn refusal(&self, name: Option<&str>, shown: &str) -> (String, String) {
        let name = name.map(|name| format!("{} ", quoted(name))).unwrap_or_default();
        let Range { words, .. } = self;
        (format!("{name}must be {words}: {shown} is not"), format!("write a length that is {words}"))
    }
}
