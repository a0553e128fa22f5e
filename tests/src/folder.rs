//! Folders for tests to write to.
use std::fs;
use std::path::{Path, PathBuf};

/// A folder of one test, taken away in the end.
#[derive(Debug)]
pub struct Folder(pub PathBuf);

#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
impl Folder {
    /// An empty folder; the name is the test's.
    ///
    /// # Panics
    ///
    /// When it can't be made.
    pub fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("tilepost-{name}-{}", std::process::id()));
        fs::create_dir_all(&path).unwrap();
        Folder(path)
    }

    /// Writes a file into it, or into a folder in it.
    ///
    /// # Panics
    ///
    /// When it can't be written.
    pub fn file(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let path = self.0.join(name);
        fs::create_dir_all(path.parent().unwrap_or(Path::new(""))).unwrap();
        fs::write(&path, bytes).unwrap();
        path
    }

    /// What is in it and in its folders, by name.
    ///
    /// # Panics
    ///
    /// When it can't be read.
    pub fn names(&self) -> Vec<String> {
        let mut names = Vec::new();
        let mut folders = vec![self.0.clone()];
        while let Some(folder) = folders.pop() {
            for entry in fs::read_dir(folder).unwrap() {
                let path = entry.unwrap().path();
                if path.is_dir() {
                    folders.push(path);
                } else {
                    names.push(path.strip_prefix(&self.0).unwrap_or(&path).display().to_string());
                }
            }
        }
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}
