//! `tilepost compare`: what changed between the bid and what was built.
use std::path::Path;

use takeoff_core::compare::compare as compare_takeoffs;
use takeoff_core::job::utf8_text;
use takeoff_core::report::document;
use takeoff_core::{Problems, api, report};

use crate::input::JobFile;
use crate::takeoffs::takeoffs;
use crate::{Failure, console, input};

pub(crate) fn compare(bid: &Path, as_built: &Path, json: bool) -> Result<(), Failure> {
    let bid = JobFile::read(bid)?;
    let built = read_as_built(&bid, as_built)?;
    let compared = takeoffs(&[&bid, &built]).map(|takeoffs| compare_takeoffs(&takeoffs[0], &takeoffs[1]));
    if json {
        console::print(&api::compared_answer(&compared))?;
    }
    let comparison = compared.map_err(|_| Failure::Problems)?;
    if !json {
        console::print(&report::comparison(&document::Comparison::from(&comparison)))?;
    }
    if comparison.changed() { Err(Failure::Changed) } else { Ok(()) }
}

/// Reads the job as built: a job file, or a CSV file of posts that take the place of the bid's.
fn read_as_built(bid: &JobFile, path: &Path) -> Result<JobFile, Failure> {
    if !path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("csv")) {
        return JobFile::read(path);
    }
    let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy().into_owned();
    let bytes = input::bytes(path)?;
    // Problems of the bid are reported once, with the bid.
    let job = match (&bid.job, utf8_text(&bytes, &format!("`{name}`"))) {
        (Ok(bid), Ok(posts)) => bid.as_built(&name, posts),
        (Ok(_), Err(problem)) => Err(problem.into()),
        (Err(_), _) => Err(Problems::new()),
    };
    Ok(JobFile { path: path.to_owned(), text: String::new(), notation: bid.notation, job })
}
