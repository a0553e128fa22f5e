//! A job file that is written beside other files of the user's, with copies of the files it names.
//!
//! Each file appears whole under its name. An existing file is replaced only if an earlier run wrote it and it is
//! unchanged since; a record beside it, `NAME.sha256`, tells.
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::location::resolved;
use crate::record::{Record, State};
use crate::staging::Staging;
use crate::{Failure, console, input};

/// Longest file name, in bytes, that common file systems take.
const LONGEST_NAME: usize = 255;

/// A file that may be written or replaced.
pub(crate) struct OutputFile {
    path: PathBuf,
}

impl OutputFile {
    /// Checks that `path` may be written.
    ///
    /// # Errors
    ///
    /// The path is an input of the run, or no file can be there.
    pub(crate) fn new(path: &Path, inputs: &[PathBuf]) -> Result<OutputFile, Failure> {
        let output = OutputFile { path: path.to_owned() };
        let name = output.name()?;
        let longest = LONGEST_NAME - ".sha256".len();
        if name.len() > longest {
            return Err(Failure::write(
                path,
                format_args!("its name has more than {longest} bytes; shorten it"),
            ));
        }
        let is_input = inputs.iter().any(|input| resolved(input) == resolved(path));
        let is_other = fs::symlink_metadata(path).is_ok_and(|metadata| !metadata.is_file());
        if is_input {
            Err(Failure::write(path, "the job is read from it; name another file"))
        } else if path.is_dir() {
            Err(Failure::write(path, "a folder is there; name a file in it"))
        } else if is_other {
            Err(Failure::write(path, "a link, pipe or device is there; name another file"))
        } else {
            Ok(output)
        }
    }

    /// Path of the file, as the user wrote it.
    pub(crate) fn path(&self) -> &Path {
        &self.path
    }

    /// Writes the file and the copies that belong beside it.
    ///
    /// # Errors
    ///
    /// A different file is there that no earlier run wrote, a file can't be written, or a signal has arrived.
    pub(crate) fn write(&self, bytes: &[u8], copies: &[(PathBuf, Vec<u8>)]) -> Result<(), Failure> {
        let parent = match self.path.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent,
            _ => Path::new("."),
        };
        fs::create_dir_all(parent).map_err(|error| Failure::write(parent, error))?;
        let mut staging = Staging::new(parent, &self.path)?;
        let name = self.name()?;
        let record_path = self.path.with_file_name(format!("{name}.sha256"));
        let record = Record::new([(name.as_str(), bytes)]);
        let staged = staging.write("job", bytes)?;
        let staged_record = staging.write("record", record.text().as_bytes())?;
        let mut staged_copies = Vec::new();
        for (number, (to, bytes)) in copies.iter().enumerate() {
            staged_copies.push((staging.write(&format!("copy-{number}"), bytes)?, to));
        }
        let is_same = self.check_replaceable(&name, bytes, &record_path)?;
        for (from, to) in staged_copies {
            if fs::symlink_metadata(to).is_ok() {
                return Err(Failure::write(to, "a file is there now; try again"));
            }
            let folder = to.parent().unwrap_or(parent);
            fs::create_dir_all(folder).map_err(|error| Failure::write(to, error))?;
            staging.place_file(&from, to)?;
        }
        if !is_same {
            staging.place_file(&staged, &self.path)?;
        }
        // A file that is right already gets no record, for it may be the user's; an old record is brought up to date.
        if !is_same || record_path.exists() {
            staging.place_file(&staged_record, &record_path)?;
        }
        let paths = [&self.path].into_iter().chain(copies.iter().map(|(to, _)| to));
        let paths: Vec<String> = paths.map(|path| path.display().to_string()).collect();
        console::report(format_args!("wrote {}\n", paths.join(", ")));
        Ok(())
    }

    /// Whether the file has these bytes already; an error where it is different and not from an earlier run.
    fn check_replaceable(&self, name: &str, bytes: &[u8], record_path: &Path) -> Result<bool, Failure> {
        let record = Record::read(record_path);
        let is_record = record.names().eq([name]);
        if !is_record && fs::symlink_metadata(record_path).is_ok() {
            return Err(Failure::write(
                record_path,
                "it goes beside the job, and a file is there; move it elsewhere or name another job file",
            ));
        }
        match fs::symlink_metadata(&self.path) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(false),
            Err(error) => return Err(Failure::write(&self.path, error)),
            Ok(metadata) if metadata.is_file() && metadata.len() == bytes.len() as u64 => {
                if input::bytes(&self.path)? == bytes {
                    return Ok(true);
                }
            }
            Ok(_) => {}
        }
        let state = record.state(name, &self.path);
        let trouble = match state.map_err(|error| Failure::write(&self.path, error))? {
            State::Unchanged => return Ok(false),
            State::Changed => "it was changed after an earlier run wrote it",
            State::Unlisted => "a file is there that no earlier run wrote",
        };
        Err(Failure::write(&self.path, format_args!("{trouble}; move it elsewhere or name another file")))
    }

    fn name(&self) -> Result<String, Failure> {
        let name = self.path.file_name().and_then(|name| name.to_str());
        name.map(str::to_owned)
            .ok_or_else(|| Failure::write(&self.path, "it is no file name in UTF-8; name another"))
    }
}
