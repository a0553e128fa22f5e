//! Lengths of curves, sums and quotients, which are no whole number of nanometres.
use std::iter::Sum;

use super::Length;

/// A length as a real number of millimetres: of a saw cut, an edge, a clearance. Computed, never written, and without
/// a limit: a sum over a whole job may pass [`Length::LIMIT`].
///
/// # Example
///
/// ```
/// use takeoff_core::units::{Length, RealLength};
/// let cuts = [RealLength::from_mm(6e6), RealLength::from_mm(6e6)];
/// let path: RealLength = cuts.into_iter().sum();
/// assert_eq!(path.nearest().metric(0), "12000000 mm"); // 12 km, above the limit of one length
/// assert_eq!(RealLength::from(Length::INCH).mm(), 25.4);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct RealLength(f64);

impl RealLength {
    /// From millimetres.
    pub const fn from_mm(mm: f64) -> RealLength {
        RealLength(mm)
    }

    /// In millimetres.
    pub const fn mm(self) -> f64 {
        self.0
    }

    /// The nearest whole number of nanometres, half away from zero, to be shown.
    pub fn nearest(self) -> Length {
        // The conversion stops at the ends of i64, 9 million kilometres off.
        Length::from_nm((self.0 * 1e6).round() as i64)
    }
}

impl From<Length> for RealLength {
    fn from(length: Length) -> RealLength {
        RealLength(length.mm())
    }
}

impl Sum for RealLength {
    fn sum<I: Iterator<Item = RealLength>>(lengths: I) -> RealLength {
        RealLength(lengths.map(RealLength::mm).sum())
    }
}
