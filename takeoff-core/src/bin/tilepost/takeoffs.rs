//! Takeoffs of the job files of a run.
use takeoff_core::{Problems, Takeoff, takeoff};

use crate::diagnostics;
use crate::input::JobFile;

/// The takeoff of each job, or the problems of all jobs, which are reported on standard error.
pub(crate) fn takeoffs(files: &[&JobFile]) -> Result<Vec<Takeoff>, Problems> {
    let mut takeoffs = Vec::new();
    let mut problems = Problems::new();
    for file in files {
        match file.job.clone().and_then(|job| takeoff(&job)) {
            Ok(takeoff) => takeoffs.push(takeoff),
            Err(found) if found.is_empty() => {}
            Err(found) => {
                diagnostics::report(file, &found);
                problems.extend(found);
            }
        }
    }
    if problems.is_empty() { Ok(takeoffs) } else { Err(problems) }
}
