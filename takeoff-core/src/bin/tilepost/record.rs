//! Record of the files that a run wrote: SHA-256 and name, one file a line, in the form that `sha256sum --check` reads.
//!
//! A later run replaces a file only if the record lists it and the file still has the recorded digest.
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io;
use std::path::Path;

use sha2::{Digest, Sha256};

/// Digests in hexadecimal, by file name.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Record(BTreeMap<String, String>);

/// State of a file against a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum State {
    /// The file is as an earlier run wrote it.
    Unchanged,
    /// An earlier run wrote the file, and its content is different now.
    Changed,
    /// No earlier run wrote the file.
    Unlisted,
}

impl Record {
    /// Record of files that are about to be written.
    pub(crate) fn new<'f>(files: impl IntoIterator<Item = (&'f str, &'f [u8])>) -> Record {
        let digest = |bytes| hexadecimal(&Sha256::digest(bytes));
        Record(files.into_iter().map(|(name, bytes)| (name.to_owned(), digest(bytes))).collect())
    }

    /// Reads a record. A missing file, a link, and text that is no record give an empty record, which lets nothing be
    /// replaced.
    pub(crate) fn read(path: &Path) -> Record {
        let is_file = fs::symlink_metadata(path).is_ok_and(|metadata| metadata.is_file());
        let text = if is_file { fs::read_to_string(path).unwrap_or_default() } else { String::new() };
        let line = |line: &str| {
            let (digest, name) = line.split_once("  ")?;
            Some((name.to_owned(), digest.to_owned()))
        };
        Record(text.lines().map(line).collect::<Option<_>>().unwrap_or_default())
    }

    /// The text of the record, by name.
    pub(crate) fn text(&self) -> String {
        self.0.iter().map(|(name, digest)| format!("{digest}  {name}\n")).collect()
    }

    /// Names of the files in the record.
    pub(crate) fn names(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }

    /// State of the file at `path`, which the record may list as `name`.
    ///
    /// # Errors
    ///
    /// The file can't be read.
    pub(crate) fn state(&self, name: &str, path: &Path) -> io::Result<State> {
        let Some(digest) = self.0.get(name) else { return Ok(State::Unlisted) };
        if !fs::symlink_metadata(path)?.is_file() {
            return Ok(State::Changed);
        }
        let mut hash = Sha256::new();
        io::copy(&mut File::open(path)?, &mut hash)?;
        Ok(if hexadecimal(&hash.finalize()) == *digest { State::Unchanged } else { State::Changed })
    }
}

fn hexadecimal(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The digest of `abc` is the example of FIPS 180-4, "SHA-256 Example (One-Block Message)".
    #[test]
    fn a_record_reads_as_sha256sum_writes_it() {
        let record = Record::new([("a b.csv", b"abc".as_slice())]);
        assert_eq!(
            record.text(),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a b.csv\n"
        );
        let path = std::env::temp_dir().join(format!("tilepost-record-{}", std::process::id()));
        fs::write(&path, record.text()).unwrap();
        assert_eq!(Record::read(&path), record);
        assert_eq!(record.state("a b.csv", &path).unwrap(), State::Changed);
        assert_eq!(record.state("other", &path).unwrap(), State::Unlisted);
        fs::write(&path, "abc").unwrap();
        assert_eq!(record.state("a b.csv", &path).unwrap(), State::Unchanged);
        assert_eq!(Record::read(&path), Record::default());
        fs::remove_file(path).unwrap();
    }
}
