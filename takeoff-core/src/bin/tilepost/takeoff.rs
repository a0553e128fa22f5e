//! `tilepost takeoff`: the whole takeoff of a job.
use std::path::Path;

use takeoff_core::report::document;
use takeoff_core::{api, report};

use crate::input::JobFile;
use crate::output_folder::OutputFolder;
use crate::takeoffs::takeoffs;
use crate::{Failure, console};

pub(crate) fn takeoff(path: &Path, out: Option<&Path>, json: bool) -> Result<(), Failure> {
    let file = JobFile::read(path)?;
    let out = out.map(|out| OutputFolder::new(out, "takeoff", &file.inputs())).transpose()?;
    let takeoff = takeoffs(&[&file]).map(|takeoffs| document::Takeoff::from(&takeoffs[0]));
    if json {
        console::print(&api::answer(&takeoff))?;
    }
    let takeoff = takeoff.map_err(|_| Failure::Problems)?;
    if !json {
        console::print(&report::summary(&takeoff))?;
    }
    match out {
        Some(out) => out.write(&report::files(&takeoff)),
        None => Ok(()),
    }
}
