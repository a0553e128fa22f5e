//! Reads a job and the files it names.
use std::fs::File;
use std::io::Read;
use std::path::Path;

use takeoff_core::job::{Files, Job, Problem, Severity};

use crate::Failure;

/// The greatest job file that is read: a hundred times a large roof.
const GREATEST: u64 = 64 << 20;

/// A job file's reading: the job, or every problem in it.
pub(crate) fn job(path: &Path) -> Result<Result<Job, Vec<Problem>>, Failure> {
    let bytes = bytes(path)?;
    let is_toml = path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("toml"));
    let Ok(text) = std::str::from_utf8(&bytes) else {
        return Ok(Job::read_bytes(&bytes, &Files::new()));
    };
    let names = if is_toml { Job::files_named_toml(text) } else { Job::files_named(text) };
    let folder = path.parent().unwrap_or(Path::new(""));
    let mut files = Files::new();
    let mut unread = Vec::new();
    for name in names {
        let beside = folder.join(&name);
        // A file that is not there is the job's own problem, told with its place.
        if !beside.exists() {
            continue;
        }
        match String::from_utf8(self::bytes(&beside)?) {
            Ok(text) => {
                files.insert(name, text);
            }
            Err(error) => unread.push(not_utf8(&name, error.utf8_error().valid_up_to())),
        }
    }
    if !unread.is_empty() {
        return Ok(Err(unread));
    }
    Ok(if is_toml { Job::read_toml(text, &files) } else { Job::read(text, &files) })
}

fn not_utf8(name: &str, at: usize) -> Problem {
    Problem {
        code: "not-utf8".to_owned(),
        message: format!("`{name}` is not UTF-8 text: byte {at} is none"),
        help: "save it as UTF-8".to_owned(),
        path: String::new(),
        severity: Severity::Error,
    }
}

/// A file whole, in bounded memory.
fn bytes(path: &Path) -> Result<Vec<u8>, Failure> {
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
