//! A folder of results, written as one set.
//!
//! The set is written to a hidden folder beside it, which then takes the folder's place in one step: a run that is
//! killed leaves the old set or the new one, whole. A folder is replaced only if it is empty or holds an earlier set of
//! the same verb, every file unchanged; so a file that the user added or edited is never lost, and no file of an
//! earlier run stays behind. A file of the user's is refused rather than moved to the new folder, since programs that
//! have it open, and folders below, don't survive a move everywhere.
use std::collections::BTreeSet;
use std::env;
use std::fmt::Display;
use std::fs;
use std::path::{Path, PathBuf};

use crate::location::{folded, resolved};
use crate::record::{Record, State};
use crate::staging::{Staging, is_left_by_system, restore, walk};
use crate::{Failure, console};

/// A folder that may be replaced.
pub(crate) struct OutputFolder {
    /// As the user wrote it, for messages.
    given: PathBuf,
    folder: PathBuf,
    /// Name of the record. Each verb has its own, so that one verb never removes files of another.
    record: String,
}

impl OutputFolder {
    /// Checks that results of `verb` may be written to `folder`.
    ///
    /// # Errors
    ///
    /// The folder holds an input of the run or a file that no earlier run of `verb` wrote, or it can't be replaced.
    pub(crate) fn new(folder: &Path, verb: &str, inputs: &[PathBuf]) -> Result<OutputFolder, Failure> {
        let output = OutputFolder {
            given: folder.to_owned(),
            folder: resolved(folder),
            record: format!("tilepost-{verb}.sha256"),
        };
        if let Some(input) = inputs.iter().find(|input| resolved(input).starts_with(&output.folder)) {
            let input = input.display();
            return Err(
                output.refused(format_args!("the job is read from it (`{input}`); name a folder of its own"))
            );
        }
        // A shell in a folder that is replaced would stand in a folder that is gone.
        let here = env::current_dir().map(|here| resolved(&here));
        if here.is_ok_and(|here| here.starts_with(&output.folder)) || output.folder.file_name().is_none() {
            return Err(output.refused(
                "the command runs in it, and the folder is replaced whole; name a folder inside it",
            ));
        }
        output.check()?;
        Ok(output)
    }

    /// Whether `path` is in the folder: its name there.
    pub(crate) fn name_of(&self, path: &Path) -> Option<String> {
        let path = resolved(path);
        let steps: Option<Vec<&str>> =
            path.strip_prefix(&self.folder).ok()?.iter().map(|step| step.to_str()).collect();
        Some(steps?.join("/"))
    }

    /// Writes the set, or leaves the folder as it was.
    ///
    /// # Errors
    ///
    /// A file can't be written, the folder may no longer be replaced, or a signal has arrived.
    pub(crate) fn write(&self, files: &[(String, Vec<u8>)]) -> Result<(), Failure> {
        let parent = self.folder.parent().unwrap_or(Path::new(""));
        fs::create_dir_all(parent).map_err(|error| self.refused(error))?;
        let mut staging = Staging::new(parent, &self.given)?;
        restore(&self.folder);
        for (name, bytes) in files {
            staging.write(name, bytes)?;
        }
        let record = Record::new(files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())));
        staging.write(&self.record, record.text().as_bytes())?;
        self.check()?;
        staging.place_folder(&self.folder)?;
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        console::report(format_args!("wrote {} to {}\n", names.join(", "), self.given.display()));
        Ok(())
    }

    /// Checks that the names of a set stay apart on every file system.
    ///
    /// # Errors
    ///
    /// Two names differ by case or Unicode form alone, or one is that of the record.
    pub(crate) fn check_names<'n>(&self, names: impl IntoIterator<Item = &'n str>) -> Result<(), Failure> {
        let mut seen = BTreeSet::from([folded(&self.record)]);
        match names.into_iter().find(|name| !seen.insert(folded(name))) {
            Some(name) => {
                Err(self.refused(format_args!("two files would go to `{name}` there; name another job file")))
            }
            None => Ok(()),
        }
    }

    /// Checks what is in the folder now.
    fn check(&self) -> Result<(), Failure> {
        let Ok(metadata) = fs::symlink_metadata(&self.folder) else { return Ok(()) };
        if metadata.is_symlink() {
            return Err(self.refused("it is a link that leads nowhere; remove it or name another folder"));
        }
        if !metadata.is_dir() {
            return Err(self.refused("a file is there; name another folder"));
        }
        if metadata.permissions().readonly() {
            return Err(self.refused("it is read-only; name another folder"));
        }
        let failed = |error: std::io::Error| self.refused(error);
        let record = Record::read(&self.folder.join(&self.record));
        for name in walk(&self.folder).map_err(failed)? {
            let is_folder_of_set =
                name.ends_with('/') && record.names().any(|listed| listed.starts_with(&name));
            if is_folder_of_set || name == self.record || is_left_by_system(&name) {
                continue;
            }
            let trouble = match record.state(&name, &self.folder.join(&name)).map_err(failed)? {
                State::Unchanged => continue,
                State::Changed => "was changed after an earlier run wrote it",
                State::Unlisted => "was not written there by an earlier run",
            };
            let help = "move it elsewhere or name another folder";
            return Err(
                self.refused(format_args!("`{name}` {trouble}, and the folder is replaced whole; {help}"))
            );
        }
        Ok(())
    }

    fn refused(&self, reason: impl Display) -> Failure {
        Failure::write(&self.given, reason)
    }
}
