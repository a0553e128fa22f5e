//! A sine wave.
use std::f64::consts::{PI, TAU};

use super::carlson::{rd, rf};
use super::{ProfileError, check};
use crate::num::math::{cos, sin};
use crate::units::Length;

/// A sine wave that starts in a trough: `z(x) = rise/2 · (1 − cos(2πx/wave))`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sine {
    rise: Length,
    wave: Length,
}

impl Sine {
    /// A wave `rise` high from trough to crest and `wave` long from trough to trough.
    ///
    /// # Errors
    ///
    /// The wave or the rise is not above 0.
    pub fn new(rise: Length, wave: Length) -> Result<Sine, ProfileError> {
        check(rise, wave).map(|()| Sine { rise, wave })
    }

    /// Height of the crests above the troughs.
    pub fn rise(&self) -> Length {
        self.rise
    }

    /// Length of the wave in plan, from trough to trough.
    pub fn wave(&self) -> Length {
        self.wave
    }

    /// Height of the face above the troughs, in millimetres.
    pub fn height(&self, x_mm: f64) -> f64 {
        let s = sin(PI * x_mm / self.wave.mm());
        self.rise.mm() * s * s
    }

    /// Length along the face from the left edge, in millimetres.
    ///
    /// The slope of the face is `k sin θ` with `k = π · rise/wave` and `θ = 2πx/wave`, so the length
    /// is `wave/2π` times the integral of `sqrt(1 + k² sin² θ)`: Legendre's incomplete elliptic
    /// integral of the second kind, of the parameter `−k²`.
    ///
    /// # Source
    ///
    /// NIST Digital Library of Mathematical Functions, equation 19.25.9: Legendre's integral in
    /// Carlson's symmetric ones. With a negative parameter both its terms are positive.
    ///
    /// # Example
    ///
    /// A wave `wave/π` high has `k = 1`, and is `(2/π) √2 E(1/2) = 0.63662 · 1.41421 · 1.35064 = 1.2160`
    /// times as long as in plan.
    ///
    /// ```
    /// use takeoff_core::profile::Sine;
    /// use takeoff_core::units::Length;
    /// let sine = Sine::new(Length::from_nm(31_830_989), Length::from_nm(100_000_000))?;
    /// assert!((sine.developed(100.0) - 121.60).abs() < 0.005);
    /// assert!((sine.developed(25.0) - 121.60 / 4.0).abs() < 0.005);
    /// # Ok::<(), takeoff_core::profile::ProfileError>(())
    /// ```
    pub fn developed(&self, x_mm: f64) -> f64 {
        let wave = self.wave.mm();
        // The face is the same, read backward, on the other side of each trough and each crest: go
        // by the nearest trough or crest, and add up from there.
        let halves = (2.0 * x_mm / wave).round();
        let rest = x_mm - halves * wave / 2.0;
        let theta = TAU * rest / wave;
        self.arc() / 2.0 * halves + self.beyond_trough(sin(theta), cos(theta))
    }

    /// Length of one wave along the face, in millimetres:
    /// `(2 wave/π) · sqrt(1 + k²) · E(k²/(1 + k²))`, with the complete elliptic integral `E(m)`.
    pub fn arc(&self) -> f64 {
        4.0 * self.beyond_trough(1.0, 0.0)
    }

    /// Length along the face from a trough to the angle θ, at most a quarter turn either way.
    fn beyond_trough(&self, sin: f64, cos: f64) -> f64 {
        let wave = self.wave.mm();
        let k = PI * self.rise.mm() / wave;
        let steep = k * k * sin * sin;
        let (x, y) = (cos * cos, 1.0 + steep);
        wave / TAU * sin * (rf(x, y, 1.0) + steep / 3.0 * rd(x, y, 1.0))
    }
}
