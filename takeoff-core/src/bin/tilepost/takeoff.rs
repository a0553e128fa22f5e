//! `tilepost takeoff`: the whole takeoff of a job.
use std::path::Path;

use takeoff_core::takeoff::{Takeoff, takeoff as take_off};
use takeoff_core::{api, report};

use crate::problems::{counted, told};
use crate::{Failure, read, write};

pub(crate) fn takeoff(path: &Path, out: Option<&Path>, json: bool) -> Result<(), Failure> {
    let taken = read::job(path)?.and_then(|job| take_off(&job));
    if json {
        write::to_stdout(&api::answer(&taken))?;
    }
    let takeoff = taken.map_err(|problems| {
        eprint!("{}", told(path, &problems));
        eprintln!("{}: {}", path.display(), counted(&problems));
        Failure::Problems
    })?;
    if !json {
        write::to_stdout(&report::summary(&takeoff))?;
    }
    if let Some(folder) = out {
        let files = files(&takeoff);
        write::to_folder(folder, &files)?;
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        eprintln!("wrote {} to {}", names.join(", "), folder.display());
    }
    Ok(())
}

/// Everything a takeoff is written to, by name.
fn files(takeoff: &Takeoff) -> Vec<(String, String)> {
    let mut files = vec![("takeoff.json".to_owned(), api::document(takeoff))];
    for (name, table) in report::tables::all(takeoff) {
        files.push((format!("{name}.csv"), table.csv()));
    }
    for (number, slope) in takeoff.slopes.iter().enumerate() {
        if let Some(map) = report::roof_map(takeoff, &slope.name) {
            files.push((map_name(number, &slope.name), map));
        }
    }
    files
}

/// `roof-1-south.svg`: numbered, so that two names that differ in signs alone stay apart.
fn map_name(number: usize, slope: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() { c } else { '-' };
    format!("roof-{}-{}.svg", number + 1, slope.chars().take(60).map(plain).collect::<String>())
}
