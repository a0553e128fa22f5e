//! `tilepost check`: every problem in a job file.
use std::path::Path;

use takeoff_core::api;

use crate::input::JobFile;
use crate::{Failure, console, diagnostics};

pub(crate) fn check(path: &Path, json: bool) -> Result<(), Failure> {
    let file = JobFile::read(path)?;
    let problems = match &file.job {
        Ok(job) => job.findings(),
        Err(problems) => problems,
    };
    if json {
        console::print(&api::checked(&file.job))?;
    } else {
        console::print(&diagnostics::text(&file, problems))?;
        diagnostics::report_count(&file, problems);
    }
    file.job.map(drop).map_err(|_| Failure::Problems)
}
