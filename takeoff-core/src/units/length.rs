//! A length in whole nanometres.
use std::ops::{Add, Neg, Sub};

/// A signed length, a whole number of nanometres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);
    /// From whole nanometres.
    pub const fn from_nm(nm: i64) -> Length {
        Length(nm)
    }
    /// In whole nanometres.
    pub const fn nm(self) -> i64 {
        self.0
    }
    /// In millimetres; exact to the nanometre for every length within the limits (±10 km).
    pub fn mm(self) -> f64 {
        self.0 as f64 / 1e6
    }
}
impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0 + other.0)
    }
}
impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0 - other.0)
    }
}
impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(-self.0)
    }
}
