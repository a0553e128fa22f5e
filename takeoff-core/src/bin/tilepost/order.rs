//! `tilepost order`: one order for several jobs.
use std::path::{Path, PathBuf};

use takeoff_core::report::document;
use takeoff_core::{Ordered, api, order as order_for, report};

use crate::input::JobFile;
use crate::output_folder::OutputFolder;
use crate::takeoffs::takeoffs;
use crate::{Failure, console, diagnostics};

pub(crate) fn order(paths: &[PathBuf], out: Option<&Path>, json: bool) -> Result<(), Failure> {
    let files: Vec<JobFile> = paths.iter().map(|path| JobFile::read(path)).collect::<Result<_, _>>()?;
    let inputs: Vec<PathBuf> = files.iter().flat_map(JobFile::inputs).collect();
    let out = out.map(|out| OutputFolder::new(out, "order", &inputs)).transpose()?;
    let order = takeoffs(&files.iter().collect::<Vec<_>>()).and_then(|takeoffs| {
        let jobs = files.iter().filter_map(|file| file.job.as_ref().ok());
        let ordered: Vec<Ordered<'_>> =
            jobs.zip(&takeoffs).map(|(job, takeoff)| Ordered { job, takeoff }).collect();
        order_for(&ordered).inspect_err(|problems| diagnostics::report_of_all(problems))
    });
    if json {
        console::print(&api::ordered_answer(&order))?;
    }
    let order = document::Order::from(&order.map_err(|_| Failure::Problems)?);
    if !json {
        console::print(&report::order(&order))?;
    }
    match out {
        Some(out) => out.write(&report::order_files(&order)),
        None => Ok(()),
    }
}
