//! Writes whole files or none.
use std::fs;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use crate::Failure;

/// Prints text; a reader that has gone away (`| head`) is no failure.
pub(crate) fn to_stdout(text: &str) -> Result<(), Failure> {
    match std::io::stdout().lock().write_all(text.as_bytes()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Failure::File(format!("can't write to standard output: {error}")))
        }
        _ => Ok(()),
    }
}

/// Writes files into a folder, which is made if missing: each beside its place first, and only when all are
/// written and no folder stands in the way, each is moved there.
pub(crate) fn to_folder(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<(), Failure> {
    let failed = |path: &Path, error| Failure::File(format!("can't write `{}`: {error}", path.display()));
    fs::create_dir_all(folder).map_err(|error| failed(folder, error))?;
    let beside = |name: &str| folder.join(format!(".{name}.{}.part", std::process::id()));
    let mut parts = Parts::default();
    for (name, bytes) in files {
        let part = beside(name);
        parts.0.push(part.clone());
        fs::write(&part, bytes).map_err(|error| failed(&part, error))?;
    }
    for (name, _) in files {
        let place = folder.join(name);
        if place.is_dir() {
            return Err(failed(&place, ErrorKind::IsADirectory.into()));
        }
    }
    for (name, _) in files {
        let place = folder.join(name);
        fs::rename(beside(name), &place).map_err(|error| failed(&place, error))?;
    }
    Ok(())
}

/// Files in the making; what is left of them is removed at the end, however it ends.
#[derive(Default)]
struct Parts(Vec<PathBuf>);

impl Drop for Parts {
    fn drop(&mut self) {
        for part in &self.0 {
            let _ = fs::remove_file(part);
        }
    }
}
