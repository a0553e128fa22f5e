//! Circular arcs side by side.
use super::{ProfileError, check};
use crate::num::math::{atan2, sqrt};
use crate::units::Length;

/// Circular arcs side by side, all convex up, of chord `wave` and height `rise`. Their radius is
/// `R = (wave²/4 + rise²)/(2 · rise)`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Arcs {
    rise: Length,
    wave: Length,
}

impl Arcs {
    /// Arcs of chord `wave` and height `rise`.
    ///
    /// # Errors
    ///
    /// The wave or the rise is not above 0, or the rise is more than half the wave.
    pub fn new(rise: Length, wave: Length) -> Result<Arcs, ProfileError> {
        check(rise, wave)?;
        if rise > wave - rise { Err(ProfileError::Overhang) } else { Ok(Arcs { rise, wave }) }
    }

    /// Height of an arc.
    pub fn rise(&self) -> Length {
        self.rise
    }

    /// Chord of an arc.
    pub fn wave(&self) -> Length {
        self.wave
    }

    /// Height of the face above the arcs' ends, in millimetres.
    pub fn height(&self, x_mm: f64) -> f64 {
        let (_, x) = self.place(x_mm);
        let (t, y) = self.seen_from_centre(x);
        self.rise.mm() - t * t / (self.radius() + y)
    }

    /// Length along the face from the left edge, in millimetres: `R` times the angle turned
    /// through.
    ///
    /// # Example
    ///
    /// Chord 8 and rise 2 have the radius (16 + 4)/4 = 5; the half-chord 4 and the centre's depth 3
    /// make the 3-4-5 triangle, so an arc is 2 · 5 · asin(0.8) = 9.273 long.
    ///
    /// ```
    /// use takeoff_core::profile::Arcs;
    /// use takeoff_core::units::Length;
    /// let mm = |n: i64| Length::from_nm(n * 1_000_000);
    /// let arcs = Arcs::new(mm(2), mm(8))?;
    /// assert!((arcs.developed(8.0) - 9.273).abs() < 0.0005);
    /// assert!((arcs.developed(4.0) - 9.273 / 2.0).abs() < 0.0005);
    /// # Ok::<(), takeoff_core::profile::ProfileError>(())
    /// ```
    pub fn developed(&self, x_mm: f64) -> f64 {
        let (waves, x) = self.place(x_mm);
        let (t, y) = self.seen_from_centre(x);
        waves * self.arc() + self.radius() * (self.half_angle() + atan2(t, y))
    }

    /// Length of one arc, in millimetres.
    pub fn arc(&self) -> f64 {
        2.0 * self.radius() * self.half_angle()
    }

    /// The whole waves left of `x`, and how far `x` is into its own.
    fn place(&self, x_mm: f64) -> (f64, f64) {
        let wave = self.wave.mm();
        let waves = (x_mm / wave).floor();
        (waves, (x_mm - waves * wave).clamp(0.0, wave))
    }

    fn radius(&self) -> f64 {
        let (half, rise) = (self.wave.mm() / 2.0, self.rise.mm());
        (half * half + rise * rise) / (2.0 * rise)
    }

    /// Half the angle that an arc turns through.
    fn half_angle(&self) -> f64 {
        let (t, y) = self.seen_from_centre(self.wave.mm());
        atan2(t, y)
    }

    /// The face at `x`, within one wave, as seen from the arc's centre: across and up.
    ///
    /// Up is `sqrt((R + t)(R − t))`, with both factors written as sums of what cannot be negative:
    /// `R − half chord = (half chord − rise)²/(2 · rise)`, which is 0 for a half-round roll.
    fn seen_from_centre(&self, x: f64) -> (f64, f64) {
        let (wave, rise) = (self.wave.mm(), self.rise.mm());
        let half = wave / 2.0;
        let beyond = (half - rise) * (half - rise) / (2.0 * rise);
        (x - half, sqrt((beyond + x) * (beyond + (wave - x))))
    }
}
