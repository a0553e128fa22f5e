//! Reads a job and the files it names.
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use takeoff_core::job::{Files, MOST_BYTES, utf8_text};
use takeoff_core::{Job, Problems};

use crate::Failure;
use crate::location::beside;

/// Notation of a job file.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Notation {
    Json,
    Toml,
}

/// A job file with its job.
pub(crate) struct JobFile {
    pub(crate) path: PathBuf,
    /// Its text; empty where it is not UTF-8.
    pub(crate) text: String,
    pub(crate) notation: Notation,
    /// The job, or every problem in it.
    pub(crate) job: Result<Job, Problems>,
}

impl JobFile {
    /// Reads a job file and the files beside it that it names.
    ///
    /// # Errors
    ///
    /// A file can't be read. Problems in the files are in [`JobFile::job`].
    pub(crate) fn read(path: &Path) -> Result<JobFile, Failure> {
        let is_toml = path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("toml"));
        let mut file = JobFile {
            path: path.to_owned(),
            text: String::new(),
            notation: if is_toml { Notation::Toml } else { Notation::Json },
            job: Err(Problems::new()),
        };
        match utf8_text(&bytes(path)?, "the file") {
            Ok(text) => {
                file.text = text.to_owned();
                file.job = file.read_job()?;
            }
            Err(problem) => file.job = Err(problem.into()),
        }
        Ok(file)
    }

    fn read_job(&self) -> Result<Result<Job, Problems>, Failure> {
        let mut files = Files::new();
        let mut problems = Vec::new();
        for name in self.names() {
            let path = beside(&self.path, &name);
            // A missing file is a problem of the job, which knows the place of its name.
            if !path.exists() {
                continue;
            }
            match utf8_text(&bytes(&path)?, &format!("`{name}`")) {
                Ok(text) => {
                    files.insert(name, text.to_owned());
                }
                Err(problem) => problems.push(problem),
            }
        }
        if !problems.is_empty() {
            return Ok(Err(problems.into()));
        }
        Ok(match self.notation {
            Notation::Json => Job::read(&self.text, &files),
            Notation::Toml => Job::read_toml(&self.text, &files),
        })
    }

    /// Paths of the job file and of every file it names.
    pub(crate) fn inputs(&self) -> Vec<PathBuf> {
        let named = self.names().into_iter().map(|name| beside(&self.path, &name));
        [self.path.clone()].into_iter().chain(named).collect()
    }

    fn names(&self) -> Vec<String> {
        match self.notation {
            Notation::Json => Job::files_named(&self.text),
            Notation::Toml => Job::files_named_toml(&self.text),
        }
    }
}

/// Bytes of a regular file of at most [`MOST_BYTES`].
///
/// # Errors
///
/// The file can't be read, is too large, or is a folder, a pipe or a device, which may have no end.
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, Failure> {
    let failed = |error: io::Error| Failure::read(path, error);
    // Opening a pipe waits for its writer, so its kind comes first.
    let metadata = fs::metadata(path).map_err(failed)?;
    if metadata.is_dir() {
        return Err(Failure::read(path, "it is a folder; name a file in it"));
    }
    if !metadata.is_file() {
        return Err(Failure::read(
            path,
            "it is a pipe or a device; save its data to a file, then name the file",
        ));
    }
    let too_large = format!(
        "it is larger than {} MiB, the most that is read; make several slopes or several jobs of it",
        MOST_BYTES >> 20
    );
    let limit = MOST_BYTES as u64;
    if metadata.len() > limit {
        return Err(Failure::read(path, too_large));
    }
    let mut bytes = Vec::new();
    File::open(path).and_then(|file| file.take(limit + 1).read_to_end(&mut bytes)).map_err(failed)?;
    // The file may have grown since.
    if bytes.len() > MOST_BYTES { Err(Failure::read(path, too_large)) } else { Ok(bytes) }
}
