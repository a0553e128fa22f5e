//! How steep a slope is.
use std::fmt;

use super::cursor::Cursor;
use super::error::{RUN_ZERO, UnitError, quoted};
use super::number::number;
use super::quantity::Quantity;
use crate::num::math;

const PITCH: Quantity<fn(f64) -> Form> = Quantity {
    expected: "write a pitch as rise:run (`5:12`), in degrees (`22.6 deg`) or in percent (`41.7 %`)",
    units: &[
        ("deg", Form::Degrees),
        ("degree", Form::Degrees),
        ("degrees", Form::Degrees),
        ("°", Form::Degrees),
        ("%", Form::Percent),
        ("percent", Form::Percent),
    ],
    range: (0.0, 80.0),
    limits: "a pitch from 0 to 80 degrees",
};

/// The pitch of a slope, from 0 to 80 degrees, shown in the form in which it was given.
///
/// With `rise` over `run`, the slope factor (length on the slope / length in plan) is
/// `sqrt(rise² + run²) / run = sqrt(1 + (rise/run)²)`.
///
/// # Example
///
/// ```
/// use takeoff_core::units::Pitch;
/// let pitch = Pitch::parse("5:12")?;
/// assert_eq!(pitch.slope_factor(), 13.0 / 12.0); // the 5-12-13 triangle
/// assert_eq!(pitch.to_string(), "5:12");
/// assert_eq!(Pitch::parse("2 1/2 : 12")?.to_string(), "2.5:12");
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Pitch(Form);

#[derive(Clone, Copy, Debug)]
enum Form {
    RiseRun(f64, f64),
    Degrees(f64),
    Percent(f64),
}

impl Pitch {
    /// Reads a pitch:
    ///
    /// ```text
    /// pitch = number ":" number                      (rise:run)
    ///       | number ( "deg" | "degree" | "degrees" | "°" )
    ///       | number ( "%" | "percent" )
    /// ```
    ///
    /// The numbers are those of [`super::Length::parse`]: decimals and fractions will do.
    ///
    /// # Errors
    ///
    /// `5/12` is refused: some mean rise over run by it, others rise over the whole span. So is a pitch
    /// below 0 or above 80 degrees.
    pub fn parse(text: &str) -> Result<Pitch, UnitError> {
        let mut cursor = Cursor::new(text, PITCH.expected);
        let negative = cursor.minus();
        let first = number(&mut cursor)?.to_f64();
        let first = if negative { 0.0 - first } else { first };
        cursor.skip_spaces();
        let form = if cursor.eat(':') {
            cursor.skip_spaces();
            let run = number(&mut cursor)?.to_f64();
            cursor.end()?;
            if run == 0.0 {
                let message = format!("{} has no run", quoted(text));
                return Err(UnitError::new(RUN_ZERO, message, PITCH.expected));
            }
            Form::RiseRun(first, run)
        } else {
            PITCH.unit(cursor)?(first)
        };
        PITCH.within_limits(Pitch(form).degrees(), text)?;
        Ok(Pitch(form))
    }

    /// From degrees.
    ///
    /// # Errors
    ///
    /// Not a number from 0 to 80.
    pub fn from_degrees(degrees: f64) -> Result<Pitch, UnitError> {
        let degrees = PITCH.within_limits(degrees, &format!("{degrees} deg"))?;
        Ok(Pitch(Form::Degrees(degrees)))
    }

    /// The angle with the horizontal, in degrees.
    pub fn degrees(self) -> f64 {
        match self.0 {
            Form::Degrees(degrees) => degrees,
            _ => {
                let (rise, run) = self.rise_run();
                math::atan2(rise, run).to_degrees()
            }
        }
    }

    /// The tangent of the angle: rise / run.
    pub fn tan(self) -> f64 {
        let (rise, run) = self.rise_run();
        rise / run
    }

    /// The sine of the angle: rise / length on the slope.
    pub fn sin(self) -> f64 {
        let (rise, run) = self.rise_run();
        rise / math::sqrt(rise * rise + run * run)
    }

    /// The cosine of the angle: length in plan / length on the slope.
    pub fn cos(self) -> f64 {
        let (rise, run) = self.rise_run();
        run / math::sqrt(rise * rise + run * run)
    }

    /// Length on the slope / length in plan.
    pub fn slope_factor(self) -> f64 {
        let (rise, run) = self.rise_run();
        math::sqrt(rise * rise + run * run) / run
    }

    fn rise_run(self) -> (f64, f64) {
        match self.0 {
            Form::RiseRun(rise, run) => (rise, run),
            Form::Percent(percent) => (percent, 100.0),
            Form::Degrees(degrees) => (math::tan(degrees.to_radians()), 1.0),
        }
    }
}

/// Equally steep, however written.
impl PartialEq for Pitch {
    fn eq(&self, other: &Pitch) -> bool {
        self.tan() == other.tan()
    }
}

impl fmt::Display for Pitch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Form::RiseRun(rise, run) => write!(f, "{rise}:{run}"),
            Form::Degrees(degrees) => write!(f, "{degrees} deg"),
            Form::Percent(percent) => write!(f, "{percent} %"),
        }
    }
}
