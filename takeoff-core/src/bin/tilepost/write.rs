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

/// Writes files into a folder, which is made if missing.
pub(crate) fn to_folder(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<(), Failure> {
    let places: Vec<_> = files.iter().map(|(name, bytes)| (folder.join(name), bytes.clone())).collect();
    to_places(&places)
}

/// Writes files, each beside its place first, in a folder that is made if missing; only when all are written and no
/// folder stands in the way, each is moved to its place.
pub(crate) fn to_places(files: &[(PathBuf, Vec<u8>)]) -> Result<(), Failure> {
    let failed = |path: &Path, error| Failure::File(format!("can't write `{}`: {error}", path.display()));
    let mut parts = Parts::default();
    for (place, bytes) in files {
        let folder = place.parent().unwrap_or(Path::new(""));
        fs::create_dir_all(folder).map_err(|error| failed(folder, error))?;
        let part = beside(place);
        parts.0.push(part.clone());
        fs::write(&part, bytes).map_err(|error| failed(&part, error))?;
    }
    for (place, _) in files {
        if place.is_dir() {
            return Err(failed(place, ErrorKind::IsADirectory.into()));
        }
    }
    for (place, _) in files {
        fs::rename(beside(place), place).map_err(|error| failed(place, error))?;
    }
    Ok(())
}

/// Where a file is written until all are.
fn beside(place: &Path) -> PathBuf {
    let name = place.file_name().unwrap_or_default().to_string_lossy();
    place.with_file_name(format!(".{name}.{}.part", std::process::id()))
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
