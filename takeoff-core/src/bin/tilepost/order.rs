//! `tilepost order`: one order for several jobs.
use std::path::{Path, PathBuf};

use takeoff_core::{Ordered, api, order as order_for, report};

use crate::problems::alone;
use crate::read::Reading;
use crate::taken::taken;
use crate::{Failure, read, write};

pub(crate) fn order(paths: &[PathBuf], out: Option<&Path>, json: bool) -> Result<(), Failure> {
    let readings: Vec<Reading> = paths.iter().map(|path| read::job(path)).collect::<Result<_, _>>()?;
    let ordered = taken(&readings.iter().collect::<Vec<_>>()).and_then(|takeoffs| {
        let jobs = readings.iter().filter_map(|reading| reading.job.as_ref().ok());
        let ordered: Vec<Ordered<'_>> =
            jobs.zip(&takeoffs).map(|(job, takeoff)| Ordered { job, takeoff }).collect();
        order_for(&ordered).inspect_err(|problems| eprint!("{}", alone(problems)))
    });
    if json {
        write::to_stdout(&api::ordered_answer(&ordered))?;
    }
    let order = ordered.map_err(|_| Failure::Problems)?;
    if !json {
        write::to_stdout(&report::order(&order))?;
    }
    if let Some(folder) = out {
        let files = report::order_files(&order);
        write::to_folder(folder, &files)?;
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        eprintln!("wrote {} to {}", names.join(", "), folder.display());
    }
    Ok(())
}
