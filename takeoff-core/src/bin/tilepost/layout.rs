//! `tilepost layout`: where the posts of a job's arrays go.
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use takeoff_core::{
    Job, LaidJob, Layout, Problems, api, layout as lay_out, report, write_back, write_back_toml,
};

use crate::problems::tell;
use crate::read::{Notation, Reading};
use crate::{Failure, read, write};

pub(crate) fn layout(
    path: &Path,
    out: Option<&Path>,
    folder: Option<&Path>,
    json: bool,
) -> Result<(), Failure> {
    if let Some(out) = out.filter(|out| out.extension().is_some_and(|of| of.eq_ignore_ascii_case("toml"))) {
        let place = out.display();
        return Err(Failure::File(format!(
            "`{place}` would be read as TOML, and the laid job is JSON: let it end in .json"
        )));
    }
    let reading = read::job(path)?;
    check_places(&reading, out)?;
    let laid = laid_out(&reading);
    if let Err(problems) = &laid {
        tell(&reading, problems);
    }
    let mut files = Vec::new();
    if let Ok((layout, job)) = &laid {
        if let Some(out) = out {
            files.extend(job_files(&reading, out, job)?);
        }
        if let Some(folder) = folder {
            let of_layout = report::layout_files(layout);
            files.extend(of_layout.into_iter().map(|(name, bytes)| (folder.join(name), bytes)));
        }
        check_places(&reading, files.iter().map(|(place, _)| place.as_path()))?;
    }
    if json {
        write::to_stdout(&api::layout_answer(&laid))?;
    }
    let (layout, _) = laid.map_err(|_| Failure::Problems)?;
    if !json {
        write::to_stdout(&report::layout(&layout))?;
    }
    if !files.is_empty() {
        write::to_places(&files)?;
        let places: Vec<String> = files.iter().map(|(place, _)| place.display().to_string()).collect();
        eprintln!("wrote {}", places.join(", "));
    }
    Ok(())
}

fn laid_out(reading: &Reading) -> Result<(Layout, LaidJob), Problems> {
    let job = reading.job.as_ref().map_err(Clone::clone)?;
    let out = lay_out(job)?;
    let written = match reading.notation {
        Notation::Json => write_back(&reading.text, job, &out.job),
        Notation::Toml => write_back_toml(&reading.text, job, &out.job),
    };
    Ok((out.layout, written?))
}

/// The laid job, and copies of the files that it names, where they are not beside it already.
fn job_files(reading: &Reading, out: &Path, job: &LaidJob) -> Result<Vec<(PathBuf, Vec<u8>)>, Failure> {
    let text = report::laid_document(job);
    let mut files = Vec::new();
    for name in Job::files_named(&text) {
        let (from, to) = (beside(&reading.path, &name), beside(out, &name));
        if is_same(&from, &to) {
            continue;
        }
        let bytes = read::bytes(&from)?;
        if !to.exists() {
            files.push((to, bytes));
        } else if read::bytes(&to)? != bytes {
            let [from, to] = [from, to].map(|path| path.display().to_string());
            return Err(Failure::File(format!(
                "`{to}` is there and is not the file that the job names, `{from}`: write the laid job to another folder"
            )));
        }
    }
    files.insert(0, (out.to_owned(), text.into_bytes()));
    Ok(files)
}

/// No file that the job was read from is written over, no two go to one place, and none where a folder is.
fn check_places<'p>(reading: &Reading, files: impl IntoIterator<Item = &'p Path>) -> Result<(), Failure> {
    let names = match reading.notation {
        Notation::Json => Job::files_named(&reading.text),
        Notation::Toml => Job::files_named_toml(&reading.text),
    };
    let read: Vec<PathBuf> = names.iter().map(|name| beside(&reading.path, name)).collect();
    let mut places = BTreeSet::new();
    for place in files {
        let trouble = if read.iter().chain([&reading.path]).any(|read| is_same(read, place)) {
            "the job is read from it"
        } else if !places.insert(real(place)) {
            "two files would go there"
        } else if place.is_dir() {
            "a folder is there"
        } else {
            continue;
        };
        let place = place.display();
        return Err(Failure::File(format!("can't write `{place}`: {trouble}; name another place")));
    }
    Ok(())
}

/// A file in the folder of another.
fn beside(file: &Path, name: &str) -> PathBuf {
    file.parent().unwrap_or(Path::new("")).join(name)
}

fn is_same(one: &Path, other: &Path) -> bool {
    real(one) == real(other)
}

/// Where a path leads, also one whose file is not there yet.
fn real(path: &Path) -> PathBuf {
    path.canonicalize().unwrap_or_else(|_| {
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        folder.canonicalize().unwrap_or(folder.to_owned()).join(path.file_name().unwrap_or_default())
    })
}
