//! A length in whole nanometres.
use std::iter::Sum;
use std::ops::{Add, Neg, Sub};

use crate::num::round_div;

/// A signed length, a whole number of nanometres.
///
/// Lengths that enter a takeoff lie within ±[`Length::LIMIT`]; sums of up to 900 000 such lengths
/// cannot overflow.
///
/// # Example
///
/// ```
/// use takeoff_core::units::Length;
/// let exposure = Length::parse("13 1/4 in")?;
/// assert_eq!(exposure.nm(), 336_550_000); // 13.25 × 25.4 mm
/// assert_eq!((exposure + Length::INCH).imperial(16), "1 ft 2 1/4 in");
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);
    /// One inch, 25.4 mm exactly (international yard and pound agreement, 1959).
    pub const INCH: Length = Length(25_400_000);
    /// One foot, 12 inches.
    pub const FOOT: Length = Length(12 * Length::INCH.0);
    /// One sixteenth of an inch.
    pub const SIXTEENTH: Length = Length(Length::INCH.0 / 16);
    /// One millimetre.
    pub const MM: Length = Length(1_000_000);
    /// The greatest length of a takeoff, 10 km.
    pub const LIMIT: Length = Length(10_000_000 * Length::MM.0);

    /// From whole nanometres.
    pub const fn from_nm(nm: i64) -> Length {
        Length(nm)
    }

    /// From whole nanometres, if the length is within ±[`Length::LIMIT`].
    pub fn checked(nm: i128) -> Option<Length> {
        i64::try_from(nm).ok().map(Length).filter(|length| length.abs() <= Length::LIMIT)
    }

    /// The whole number of nanometres nearest to `nm`, half away from zero, if it is a number within
    /// ±[`Length::LIMIT`].
    ///
    /// ```
    /// # use takeoff_core::units::Length;
    /// assert_eq!(Length::nearest(-2.5), Some(Length::from_nm(-3)));
    /// assert_eq!(Length::nearest(f64::NAN), None);
    /// ```
    pub fn nearest(nm: f64) -> Option<Length> {
        // The conversion stops at the ends of i128, which are far beyond the limit.
        if nm.is_nan() { None } else { Length::checked(nm.round() as i128) }
    }

    /// In whole nanometres.
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// In millimetres; exact to the nanometre for every length within the limits (±10 km).
    pub fn mm(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// The same length without its sign.
    pub const fn abs(self) -> Length {
        Length(self.0.saturating_abs())
    }

    /// This length × `top` / `over`, rounded once, half away from zero; none when `over` is zero or the
    /// result is beyond the limits.
    ///
    /// ```
    /// # use takeoff_core::units::Length;
    /// let cover = Length::parse("12 in")?;
    /// assert_eq!(cover.ratio(1, 3), Some(Length::parse("4 in")?));
    /// assert_eq!(Length::from_nm(5).ratio(1, 2), Some(Length::from_nm(3)));
    /// assert_eq!(Length::from_nm(-5).ratio(1, 2), Some(Length::from_nm(-3)));
    /// # Ok::<(), takeoff_core::units::UnitError>(())
    /// ```
    pub fn ratio(self, top: i64, over: i64) -> Option<Length> {
        let (top, over) = (i128::from(self.0) * i128::from(top), i128::from(over));
        if over == 0 { None } else { Length::checked(round_div(top, over)) }
    }

    /// The nearest multiple of `step`, half away from zero; unchanged when `step` is zero.
    ///
    /// ```
    /// # use takeoff_core::units::Length;
    /// let measured = Length::parse("6 19/32 in")?;
    /// assert_eq!(measured.round_to(Length::SIXTEENTH), Length::parse("6 5/8 in")?);
    /// # Ok::<(), takeoff_core::units::UnitError>(())
    /// ```
    pub fn round_to(self, step: Length) -> Length {
        if step == Length::ZERO {
            return self;
        }
        let rounded = round_div(i128::from(self.0), i128::from(step.0)) * i128::from(step.0);
        Length(i64::try_from(rounded).unwrap_or(self.0))
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

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}
