//! Reads a job and the files it names.
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

use takeoff_core::{Code, Files, Job, Problem, Problems};

use crate::Failure;

/// The greatest job file that is read: a hundred times a large roof.
const GREATEST: u64 = 64 << 20;

/// How a job file is written.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Notation {
    Json,
    Toml,
}

/// A job file that was read.
pub(crate) struct Reading {
    pub(crate) path: PathBuf,
    /// Its text; empty where it is none.
    pub(crate) text: String,
    pub(crate) notation: Notation,
    /// The job, or every problem in it.
    pub(crate) job: Result<Job, Problems>,
}

/// Reads a job file and the files beside it that it names.
pub(crate) fn job(path: &Path) -> Result<Reading, Failure> {
    let bytes = bytes(path)?;
    let is_toml = path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("toml"));
    let notation = if is_toml { Notation::Toml } else { Notation::Json };
    let (text, job) = match String::from_utf8(bytes) {
        Ok(text) => {
            let job = with_files(path, &text, notation)?;
            (text, job)
        }
        Err(error) => (String::new(), Job::read_bytes(error.as_bytes(), &Files::new())),
    };
    Ok(Reading { path: path.to_owned(), text, notation, job })
}

fn with_files(path: &Path, text: &str, notation: Notation) -> Result<Result<Job, Problems>, Failure> {
    let names = match notation {
        Notation::Json => Job::files_named(text),
        Notation::Toml => Job::files_named_toml(text),
    };
    let folder = path.parent().unwrap_or(Path::new(""));
    let mut files = Files::new();
    let mut unread = Vec::new();
    for name in names {
        let beside = folder.join(&name);
        // A file that is not there is the job's own problem, told with its place.
        if !beside.exists() {
            continue;
        }
        match self::text(&beside, &name)? {
            Ok(text) => {
                files.insert(name, text);
            }
            Err(problem) => unread.push(problem),
        }
    }
    if !unread.is_empty() {
        return Ok(Err(unread.into()));
    }
    Ok(match notation {
        Notation::Json => Job::read(text, &files),
        Notation::Toml => Job::read_toml(text, &files),
    })
}

/// A file's text; the problem, where it is none, calls the file by `name`.
pub(crate) fn text(path: &Path, name: &str) -> Result<Result<String, Problem>, Failure> {
    Ok(String::from_utf8(bytes(path)?).map_err(|error| {
        let message =
            format!("`{name}` is not UTF-8 text: byte {} is none", error.utf8_error().valid_up_to());
        Problem::new(Code::NotUtf8, message, "save it as UTF-8", "")
    }))
}

/// A file whole, in bounded memory.
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, Failure> {
    let failed = |error| Failure::File(format!("can't read `{}`: {error}", path.display()));
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(failed)?;
    file.take(GREATEST + 1).read_to_end(&mut bytes).map_err(failed)?;
    if bytes.len() as u64 > GREATEST {
        let most = GREATEST >> 20;
        return Err(Failure::File(format!(
            "`{}` is larger than {most} MiB, the most that is read",
            path.display()
        )));
    }
    Ok(bytes)
}
