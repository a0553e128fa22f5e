//! The tile's cross-section along `u`: flat, a sine wave, or arcs side by side.
mod arcs;
mod carlson;
mod sine;
mod trace;
pub use arcs::Arcs;
pub use sine::Sine;
pub use trace::FacePoint;

use crate::units::Length;
use std::fmt;

/// The tile's cross-section along `u`, the direction across the slope.
///
/// `x` is measured from the tile's left edge in plan, the developed length from the same edge
/// along the curved face, both in millimetres. Beyond one wave the profile repeats, to both sides.
///
/// # Example
///
/// Half-round rolls, 8 in wide and 4 in high: an arc is half a circle, `π/2` times its diameter.
///
/// ```
/// use std::f64::consts::FRAC_PI_2;
/// use takeoff_core::profile::Profile;
/// use takeoff_core::units::Length;
/// let inch = |n: i64| Length::from_nm(n * 25_400_000);
/// let rolls = Profile::arcs(inch(4), inch(8))?;
/// assert!((rolls.arc_over_wave() - FRAC_PI_2).abs() < 1e-15);
/// assert!((rolls.height(4.0 * 25.4) - 4.0 * 25.4).abs() < 1e-12);
/// // A flashing 16 in wide when flat covers 16/(π/2) = 10.19 in when it is formed over them.
/// assert!((rolls.effective_width(inch(16)) - 16.0 * 25.4 / FRAC_PI_2).abs() < 1e-12);
/// # Ok::<(), takeoff_core::profile::ProfileError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Profile {
    /// No rise.
    Flat,
    /// A sine wave that starts in a trough.
    Sine(Sine),
    /// Circular arcs side by side, all convex up; one starts at the left edge.
    Arcs(Arcs),
}

/// Why a rise and a wave make no profile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ProfileError {
    /// The wave is not longer than 0.
    Wave,
    /// The rise is not above 0.
    Rise,
    /// The rise of an arc is more than half its wave: it would overhang.
    Overhang,
}

impl fmt::Display for ProfileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ProfileError::Wave => "the wave of a profile must be longer than 0",
            ProfileError::Rise => "the rise of a profile must be above 0",
            ProfileError::Overhang => "the rise of an arc must be at most half its wave",
        })
    }
}

impl std::error::Error for ProfileError {}

impl Profile {
    /// A sine wave; `rise` from trough to crest, `wave` from trough to trough.
    ///
    /// # Errors
    ///
    /// The wave or the rise is not above 0.
    pub fn sine(rise: Length, wave: Length) -> Result<Profile, ProfileError> {
        Sine::new(rise, wave).map(Profile::Sine)
    }

    /// Arcs of chord `wave` and height `rise`.
    ///
    /// # Errors
    ///
    /// The wave or the rise is not above 0, or the rise is more than half the wave.
    pub fn arcs(rise: Length, wave: Length) -> Result<Profile, ProfileError> {
        Arcs::new(rise, wave).map(Profile::Arcs)
    }

    /// Height of the face above its lowest line at `x_mm`, in millimetres.
    pub fn height(&self, x_mm: f64) -> f64 {
        match self {
            Profile::Flat => 0.0,
            Profile::Sine(sine) => sine.height(x_mm),
            Profile::Arcs(arcs) => arcs.height(x_mm),
        }
    }

    /// Length along the face from the left edge to `x_mm`, in millimetres; negative to the left of
    /// the edge.
    pub fn developed(&self, x_mm: f64) -> f64 {
        match self {
            Profile::Flat => x_mm,
            Profile::Sine(sine) => sine.developed(x_mm),
            Profile::Arcs(arcs) => arcs.developed(x_mm),
        }
    }

    /// Length of a wave along the face over its length in plan; 1 for a flat tile.
    pub fn arc_over_wave(&self) -> f64 {
        match self {
            Profile::Flat => 1.0,
            Profile::Sine(sine) => sine.arc() / sine.wave().mm(),
            Profile::Arcs(arcs) => arcs.arc() / arcs.wave().mm(),
        }
    }

    /// What a flashing that is `flat_width` wide when flat covers in plan once it is formed over
    /// the profile, in millimetres: `flat width × wave/arc`.
    pub fn effective_width(&self, flat_width: Length) -> f64 {
        flat_width.mm() / self.arc_over_wave()
    }

    /// Height of the crests above the troughs; 0 for a flat tile.
    pub fn greatest_rise(&self) -> Length {
        match self {
            Profile::Flat => Length::ZERO,
            Profile::Sine(sine) => sine.rise(),
            Profile::Arcs(arcs) => arcs.rise(),
        }
    }
}

/// What every waved profile asks of its rise and its wave.
fn check(rise: Length, wave: Length) -> Result<(), ProfileError> {
    if wave <= Length::ZERO {
        return Err(ProfileError::Wave);
    }
    if rise <= Length::ZERO { Err(ProfileError::Rise) } else { Ok(()) }
}

#[cfg(test)]
mod tests;
