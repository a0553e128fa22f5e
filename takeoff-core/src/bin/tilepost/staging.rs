//! A hidden folder in which files are written before any of them appears under its name.
use std::fs::{self, File, TryLockError};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::{Duration, Instant};

use crate::Failure;
use crate::interrupt::Interrupt;
use crate::record::Record;

/// Name of the staging folder, the same for every run, so that the next run clears up after one that was killed.
const NAME: &str = ".tilepost-new";
/// Longest wait for another run that writes in the same folder.
const LONGEST_WAIT: Duration = Duration::from_secs(10);

/// A staging folder, held by this run alone.
pub(crate) struct Staging {
    folder: PathBuf,
    /// What the user asked to write, for messages.
    output: PathBuf,
    /// Files that may not have reached the disk yet.
    unsynced: Vec<PathBuf>,
    interrupt: Interrupt,
    /// The lock ends when the file is closed. `None` where the system can't lock a folder; there the staging folder
    /// itself keeps other runs out.
    _lock: Option<File>,
}

impl Staging {
    /// Makes an empty staging folder in `parent` for `output`, and waits for a run that has one there now.
    ///
    /// # Errors
    ///
    /// `parent` can't be written, another run doesn't end, or the staging folder of a run that was killed holds a file
    /// that may be the user's.
    pub(crate) fn new(parent: &Path, output: &Path) -> Result<Staging, Failure> {
        let failed = |error: io::Error| {
            Failure::write(output, format_args!("no file can be made in `{}`: {error}", parent.display()))
        };
        let interrupt = Interrupt::held().map_err(failed)?;
        let lock = lock(parent, output, &interrupt)?;
        let folder = parent.join(NAME);
        if lock.is_some() && fs::symlink_metadata(&folder).is_ok_and(|metadata| metadata.is_dir()) {
            // Its lock is free: the run that made it was killed.
            clear(&folder);
        }
        match fs::create_dir(&folder) {
            Ok(()) => Ok(Staging {
                folder,
                output: output.to_owned(),
                unsynced: Vec::new(),
                interrupt,
                _lock: lock,
            }),
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {
                let folder = folder.display();
                let help = format!("look into `{folder}`, keep what you need, then remove it");
                Err(Failure::write(
                    output,
                    format_args!("another run is writing, or one was stopped; {help}"),
                ))
            }
            Err(error) => Err(failed(error)),
        }
    }

    /// Writes a file; `name` may lead into folders below, which are made.
    ///
    /// # Errors
    ///
    /// The file can't be written, or a signal has arrived.
    pub(crate) fn write(&mut self, name: &str, bytes: &[u8]) -> Result<PathBuf, Failure> {
        self.interrupt.check()?;
        let path = self.folder.join(name);
        let write = || {
            fs::create_dir_all(path.parent().unwrap_or(&self.folder))?;
            File::create_new(&path)?.write_all(bytes)
        };
        write().map_err(|error| Failure::write(&self.output, error))?;
        self.unsynced.push(path.clone());
        Ok(path)
    }

    /// Waits until every file is on the disk, where a full disk can't cut it short. One wait for all files is several
    /// times faster than a wait after each.
    fn sync(&mut self) -> Result<(), Failure> {
        for path in std::mem::take(&mut self.unsynced) {
            self.interrupt.check()?;
            let file = File::options().write(true).open(path);
            file.and_then(|file| file.sync_all()).map_err(|error| Failure::write(&self.output, error))?;
        }
        Ok(())
    }

    /// Moves a file out of the staging folder to `to`, and replaces the file there.
    ///
    /// # Errors
    ///
    /// The file can't be moved, or a signal has arrived.
    pub(crate) fn place_file(&mut self, from: &Path, to: &Path) -> Result<(), Failure> {
        self.sync()?;
        self.interrupt.check()?;
        fs::rename(from, to).map_err(|error| Failure::write(to, error))?;
        sync(to.parent());
        Ok(())
    }

    /// Makes the staging folder the folder `to` in one step; the folder that was there is removed.
    ///
    /// # Errors
    ///
    /// The folder can't be moved, or a signal has arrived.
    pub(crate) fn place_folder(mut self, to: &Path) -> Result<(), Failure> {
        self.sync()?;
        self.interrupt.check()?;
        let failed = |error: io::Error| {
            // A mount point can't be moved.
            let is_mount = matches!(error.kind(), ErrorKind::ResourceBusy | ErrorKind::CrossesDevices);
            let help = if is_mount { "; name a folder inside it" } else { "" };
            Failure::write(&self.output, format_args!("{error}{help}"))
        };
        sync(Some(&self.folder));
        match fs::metadata(to) {
            Ok(metadata) => {
                fs::set_permissions(&self.folder, metadata.permissions()).map_err(failed)?;
                exchange(&self.folder, to).map_err(failed)?;
            }
            Err(_) => fs::rename(&self.folder, to).map_err(failed)?,
        }
        sync(to.parent());
        self.interrupt.check()
    }
}

impl Drop for Staging {
    fn drop(&mut self) {
        clear(&self.folder);
    }
}

/// Locks a folder until the file is closed.
fn lock(folder: &Path, output: &Path, interrupt: &Interrupt) -> Result<Option<File>, Failure> {
    let Ok(file) = File::open(folder) else { return Ok(None) };
    let start = Instant::now();
    loop {
        match file.try_lock() {
            Ok(()) => return Ok(Some(file)),
            Err(TryLockError::Error(_)) => return Ok(None),
            Err(TryLockError::WouldBlock) if start.elapsed() > LONGEST_WAIT => {
                return Err(Failure::write(
                    output,
                    "another run is writing there; try again when it has ended",
                ));
            }
            Err(TryLockError::WouldBlock) => thread::sleep(Duration::from_millis(10)),
        }
        interrupt.check()?;
    }
}

/// Removes a staging folder: an unfinished set, or the set that a new one has replaced.
///
/// A finished set has a record, and only files that it lists are removed. A file that came in between stays, and so
/// does the folder.
pub(crate) fn clear(folder: &Path) {
    let Ok(entries) = walk(folder) else { return };
    let (records, others): (Vec<String>, Vec<String>) = entries.into_iter().partition(|name| is_record(name));
    let sets: Vec<Record> = records.iter().map(|name| Record::read(&folder.join(name))).collect();
    let is_ours = |name: &str| {
        sets.is_empty() || is_left_by_system(name) || sets.iter().any(|set| set.names().any(|of| of == name))
    };
    // Folders come before the files in them: from the end, each folder is empty in its turn.
    let mut is_clear = true;
    for name in others.iter().rev() {
        let path = folder.join(name);
        is_clear &= match name.strip_suffix('/') {
            Some(_) => fs::remove_dir(path).is_ok(),
            None => is_ours(name) && fs::remove_file(path).is_ok(),
        };
    }
    // The record goes last: until then it protects the files that it does not list.
    if is_clear {
        for name in records {
            let _ = fs::remove_file(folder.join(name));
        }
        let _ = fs::remove_dir(folder);
    }
}

/// A file name of a record of a set.
fn is_record(name: &str) -> bool {
    name.starts_with("tilepost-") && name.ends_with(".sha256")
}

/// Files that a file browser adds to each folder it shows.
pub(crate) fn is_left_by_system(name: &str) -> bool {
    matches!(name, ".DS_Store" | "Thumbs.db" | "desktop.ini")
}

/// Names of the files and folders in a folder and below, sorted, with `/` between and at the end of a folder's name.
/// Links are not followed.
///
/// # Errors
///
/// A folder can't be read.
pub(crate) fn walk(folder: &Path) -> io::Result<Vec<String>> {
    let mut names = Vec::new();
    let mut folders = vec![String::new()];
    while let Some(prefix) = folders.pop() {
        for entry in fs::read_dir(folder.join(&prefix))? {
            let entry = entry?;
            let mut name = format!("{prefix}{}", entry.file_name().to_string_lossy());
            if entry.file_type()?.is_dir() {
                name.push('/');
                folders.push(name.clone());
            }
            names.push(name);
        }
    }
    names.sort();
    Ok(names)
}

/// Swaps two folders, in one step where the system can do that.
fn exchange(new: &Path, old: &Path) -> io::Result<()> {
    #[cfg(any(target_os = "linux", target_vendor = "apple"))]
    {
        use rustix::fs::{CWD, RenameFlags, renameat_with};
        use rustix::io::Errno;
        match renameat_with(CWD, new, CWD, old, RenameFlags::EXCHANGE) {
            Err(Errno::INVAL | Errno::NOSYS | Errno::NOTSUP) => {}
            done => return Ok(done?),
        }
    }
    exchange_in_steps(new, old)
}

/// Swaps two folders in three steps; [`restore`] mends a run that is killed after the first.
fn exchange_in_steps(new: &Path, old: &Path) -> io::Result<()> {
    let aside = aside(old);
    fs::rename(old, &aside)?;
    fs::rename(new, old).inspect_err(|_| drop(fs::rename(&aside, old)))?;
    fs::rename(&aside, new)
}

/// Where a folder waits while its successor takes its place.
fn aside(folder: &Path) -> PathBuf {
    let name = folder.file_name().unwrap_or_default().to_string_lossy();
    folder.with_file_name(format!(".{name}.tilepost-old"))
}

/// Finishes or takes back a swap in steps that was cut short.
pub(crate) fn restore(folder: &Path) {
    let aside = aside(folder);
    if fs::symlink_metadata(&aside).is_ok_and(|metadata| metadata.is_dir()) {
        if folder.exists() {
            clear(&aside);
        } else {
            let _ = fs::rename(&aside, folder);
        }
    }
}

/// Makes a change in a folder last through a power cut, where the system can do that.
fn sync(folder: Option<&Path>) {
    if let Some(Ok(folder)) = folder.map(File::open) {
        let _ = folder.sync_all();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("tilepost-{name}-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        folder
    }

    #[test]
    fn a_swap_in_steps_is_taken_back_or_finished() {
        let top = folder("swap");
        let (new, old) = (top.join(NAME), top.join("out"));
        fs::create_dir(&new).unwrap();
        fs::create_dir(&old).unwrap();
        fs::write(old.join("a"), "old").unwrap();
        exchange_in_steps(&new, &old).unwrap();
        assert_eq!((walk(&old).unwrap().len(), walk(&new).unwrap()), (0, vec!["a".to_owned()]));

        // Killed after the first step.
        fs::rename(&new, aside(&old)).unwrap();
        fs::remove_dir(&old).unwrap();
        restore(&old);
        assert_eq!(walk(&top).unwrap(), ["out/", "out/a"]);

        // Killed after the second.
        fs::create_dir(aside(&old)).unwrap();
        fs::write(aside(&old).join("a"), "older").unwrap();
        restore(&old);
        assert_eq!(walk(&top).unwrap(), ["out/", "out/a"]);
        fs::remove_dir_all(top).unwrap();
    }

    #[test]
    fn a_file_that_no_run_wrote_is_never_cleared() {
        let top = folder("clear");
        let files: [(&str, &[u8]); 2] = [("a", b"1"), ("below/b", b"2")];
        fs::create_dir(top.join("below")).unwrap();
        files.iter().for_each(|(name, bytes)| fs::write(top.join(name), bytes).unwrap());
        fs::write(top.join("tilepost-takeoff.sha256"), Record::new(files).text()).unwrap();
        fs::write(top.join("below/mine"), "mine").unwrap();
        clear(&top);
        assert_eq!(walk(&top).unwrap(), ["below/", "below/mine", "tilepost-takeoff.sha256"]);
        fs::remove_file(top.join("below/mine")).unwrap();
        clear(&top);
        assert!(!top.exists());
    }
}
