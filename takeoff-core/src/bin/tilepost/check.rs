//! `tilepost check`: every problem in a job file.
use std::path::Path;

use takeoff_core::api;

use crate::problems::{counted, told};
use crate::{Failure, read, write};

pub(crate) fn check(path: &Path, json: bool) -> Result<(), Failure> {
    let reading = read::job(path)?;
    let problems = match &reading.job {
        Ok(job) => job.findings(),
        Err(problems) => problems,
    };
    if json {
        write::to_stdout(&api::checked(&reading.job))?;
    } else {
        write::to_stdout(&told(&reading, problems))?;
        eprintln!("{}: {}", path.display(), counted(problems));
    }
    reading.job.map(drop).map_err(|_| Failure::Problems)
}
