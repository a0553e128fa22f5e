//! `tilepost takeoff`: the whole takeoff of a job.
use std::path::Path;

use takeoff_core::report::document;
use takeoff_core::{api, report};

use crate::taken::taken;
use crate::{Failure, read, write};

pub(crate) fn takeoff(path: &Path, out: Option<&Path>, json: bool) -> Result<(), Failure> {
    let reading = read::job(path)?;
    let taken = taken(&[&reading]).map(|takeoffs| document::Takeoff::from(&takeoffs[0]));
    if json {
        write::to_stdout(&api::answer(&taken))?;
    }
    let takeoff = taken.map_err(|_| Failure::Problems)?;
    if !json {
        write::to_stdout(&report::summary(&takeoff))?;
    }
    if let Some(folder) = out {
        let files = report::files(&takeoff);
        write::to_folder(folder, &files)?;
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        eprintln!("wrote {} to {}", names.join(", "), folder.display());
    }
    Ok(())
}
