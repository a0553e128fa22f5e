//! The takeoffs of jobs that were read, or every problem in their way, told.
use takeoff_core::{Problems, Takeoff, takeoff};

use crate::problems::tell;
use crate::read::Reading;

/// The takeoff of every job, or the problems of all, which are told to standard error.
pub(crate) fn taken(readings: &[&Reading]) -> Result<Vec<Takeoff>, Problems> {
    let mut takeoffs = Vec::new();
    let mut problems = Problems::new();
    for reading in readings {
        match reading.job.clone().and_then(|job| takeoff(&job)) {
            Ok(takeoff) => takeoffs.push(takeoff),
            Err(found) if found.is_empty() => {}
            Err(found) => {
                tell(reading, &found);
                problems.extend(found);
            }
        }
    }
    if problems.is_empty() { Ok(takeoffs) } else { Err(problems) }
}
