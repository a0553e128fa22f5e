//! `tilepost compare`: what changed between the bid and what was built.
use std::path::Path;

use takeoff_core::compare::compare as compare_takeoffs;
use takeoff_core::{Problems, api, report};

use crate::read::Reading;
use crate::taken::taken;
use crate::{Failure, read, write};

pub(crate) fn compare(bid: &Path, as_built: &Path, json: bool) -> Result<(), Failure> {
    let bid = read::job(bid)?;
    let built = as_built_of(&bid, as_built)?;
    let compared = taken(&[&bid, &built]).map(|takeoffs| compare_takeoffs(&takeoffs[0], &takeoffs[1]));
    if json {
        write::to_stdout(&api::compared_answer(&compared))?;
    }
    let comparison = compared.map_err(|_| Failure::Problems)?;
    if !json {
        write::to_stdout(&report::comparison(&comparison))?;
    }
    if comparison.changed { Err(Failure::Changed) } else { Ok(()) }
}

/// A job file as built; or a CSV file of posts, which takes the place of the bid's.
fn as_built_of(bid: &Reading, path: &Path) -> Result<Reading, Failure> {
    if !path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("csv")) {
        return read::job(path);
    }
    let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy().into_owned();
    let posts = read::text(path, &name)?;
    // What is wrong with the bid is told as the bid's.
    let job = match (&bid.job, posts) {
        (Ok(bid), Ok(posts)) => bid.as_built(&name, &posts),
        (Ok(_), Err(problem)) => Err(problem.into()),
        (Err(_), _) => Err(Problems::new()),
    };
    Ok(Reading { path: path.to_owned(), text: String::new(), notation: bid.notation, job })
}
