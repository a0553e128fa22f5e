//! Where the noses of the courses are.
use std::fmt;

use crate::model::Laps;
use crate::units::Length;

#[cfg(test)]
mod tests;

/// The most courses that a slope may have.
pub const MOST_COURSES: usize = 10_000;

/// Why there are no noses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NosesError {
    /// The top course would not be above the first.
    NoRoom,
    /// So many courses would be more than [`MOST_COURSES`].
    TooMany(u64),
}

impl fmt::Display for NosesError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NosesError::NoRoom => f.write_str("there is no room for courses"),
            NosesError::TooMany(courses) => write!(f, "{courses} courses are more than {MOST_COURSES}"),
        }
    }
}

impl std::error::Error for NosesError {}

/// Noses at one exposure: `first + k · exposure`, while they are below `highest`, the field's highest point.
///
/// # Errors
///
/// The first nose or the exposure leaves no room for a course, or there are more than [`MOST_COURSES`].
///
/// # Example
///
/// From −1 1/2 in by 13 1/4 in to 17 ft (204 in): 205 1/2 / 13 1/4 is 15.5, so 16 courses, the last nose at
/// −1 1/2 + 15 × 13 1/4 = 197 1/4 in.
///
/// ```
/// use takeoff_core::roof::noses_at;
/// use takeoff_core::units::Length;
/// let inches = |text| Length::parse(text).unwrap();
/// let noses = noses_at(inches("-1 1/2 in"), inches("13 1/4 in"), inches("17 ft"))?;
/// assert_eq!(noses.len(), 16);
/// assert_eq!(noses[15], inches("197 1/4 in"));
/// # Ok::<(), takeoff_core::roof::NosesError>(())
/// ```
pub fn noses_at(first: Length, exposure: Length, highest: Length) -> Result<Vec<Length>, NosesError> {
    let span = i128::from(highest.nm()) - i128::from(first.nm());
    if span <= 0 || exposure <= Length::ZERO {
        return Err(NosesError::NoRoom);
    }
    let courses = count(divide_up(span, exposure.nm().into()))?;
    Ok((0..courses).map(|k| Length::from_nm(first.nm() + k * exposure.nm())).collect())
}

/// Noses of courses spread evenly from `first` to `last`, as few as the greatest exposure allows.
///
/// # Formula
///
/// `n − 1 = ceil((last − first) / greatest)`, the greatest exposure being `longest` (tile length less least
/// head lap), or half of it for double-lap tile; `nose[k] = first + round(k · (last − first)/(n − 1))`, half a
/// nanometre away from zero.
///
/// # Errors
///
/// `last` is not above `first`, the exposure is not above 0, or there are more than [`MOST_COURSES`].
///
/// # Example
///
/// 204 in at 13 in at most: 204 / 13 is 15.7, so 16 spaces of 12 3/4 in.
///
/// ```
/// use takeoff_core::model::Laps;
/// use takeoff_core::roof::noses_between;
/// use takeoff_core::units::Length;
/// let inches = |text| Length::parse(text).unwrap();
/// let noses = noses_between(Length::ZERO, inches("204 in"), inches("13 in"), Laps::Single)?;
/// assert_eq!(noses.len(), 16 + 1);
/// assert_eq!(noses[1], inches("12 3/4 in"));
/// # Ok::<(), takeoff_core::roof::NosesError>(())
/// ```
pub fn noses_between(
    first: Length,
    last: Length,
    longest: Length,
    laps: Laps,
) -> Result<Vec<Length>, NosesError> {
    let span = i128::from(last.nm()) - i128::from(first.nm());
    if span <= 0 || longest <= Length::ZERO {
        return Err(NosesError::NoRoom);
    }
    let layers = match laps {
        Laps::Single => 1,
        Laps::Double => 2,
    };
    let spaces = divide_up(span * layers, longest.nm().into());
    let courses = count(spaces + 1)?;
    let nose = |k: i64| {
        // All is positive here: adding half the divisor rounds half up, which is away from zero.
        let up = (2 * i128::from(k) * span + spaces) / (2 * spaces);
        Length::from_nm(first.nm() + i64::try_from(up).unwrap_or(i64::MAX - first.nm().abs()))
    };
    Ok((0..courses).map(nose).collect())
}

/// `top / over`, both positive, rounded up.
fn divide_up(top: i128, over: i128) -> i128 {
    (top + over - 1) / over
}

fn count(courses: i128) -> Result<i64, NosesError> {
    match i64::try_from(courses) {
        Ok(courses) if courses <= MOST_COURSES as i64 => Ok(courses),
        _ => Err(NosesError::TooMany(u64::try_from(courses).unwrap_or(u64::MAX))),
    }
}
