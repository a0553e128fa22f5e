//! The fixtures: a folder each with a job file, what its takeoff is expected to be, and who computed what.
use std::fs;
use std::io::Result;
use std::path::{Path, PathBuf};

use takeoff_core::{Files, Job, api, report};

/// The committed JSON Schema of the job file, from the repository's root.
pub const SCHEMA: &str = "takeoff-core/job.schema.json";

/// A takeoff of more bytes than this is expected as its tables.
const LARGE: usize = 1_000_000;

/// The root of the repository.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// A fixture.
#[derive(Clone, Debug)]
pub struct Case {
    /// The name of its folder.
    pub name: String,
    /// Its folder.
    pub folder: PathBuf,
}

impl Case {
    /// Every fixture, by name.
    ///
    /// # Errors
    ///
    /// When the folder of fixtures can't be read.
    pub fn all() -> Result<Vec<Case>> {
        let mut cases = Vec::new();
        for entry in fs::read_dir(root().join("fixtures"))? {
            let entry = entry?;
            if entry.file_type()?.is_dir() {
                let name = entry.file_name().to_string_lossy().into_owned();
                cases.push(Case { name, folder: entry.path() });
            }
        }
        cases.sort_by(|a, b| a.name.cmp(&b.name));
        Ok(cases)
    }

    /// Where its job file is.
    pub fn path(&self) -> PathBuf {
        self.folder.join("job.json")
    }

    /// Its job file, with the files that it names.
    ///
    /// # Errors
    ///
    /// When one of them can't be read.
    pub fn job(&self) -> Result<(String, Files)> {
        let text = fs::read_to_string(self.path())?;
        let mut files = Files::new();
        for name in Job::files_named(&text) {
            let file = fs::read_to_string(self.folder.join(&name))?;
            files.insert(name, file);
        }
        Ok((text, files))
    }

    /// What its takeoff is now, as the expected files hold it: `takeoff.json` and the roof maps, or the tables of a
    /// roof so large that nobody would read those; where its arrays have rails, the layout with its maps and the laid
    /// job, too.
    ///
    /// # Errors
    ///
    /// When a file can't be read, or the job has problems.
    pub fn expected_now(&self) -> Result<Vec<(String, String)>> {
        let (text, named) = self.job()?;
        let takeoff = api::read_and_document(&text, &named)
            .map_err(|problems| std::io::Error::other(format!("{}: {problems:#?}", self.name)))?;
        let mut files = report::files(&takeoff);
        let large = files.iter().any(|(name, text)| name == "takeoff.json" && text.len() > LARGE);
        // The page and the workbook say the same once more, for people.
        let kinds: &[&str] = if large { &[".csv"] } else { &[".json", ".svg"] };
        if text.contains("\"rails\"") {
            files.extend(self.layout_now(&text, &named)?);
        }
        let kept = files.into_iter().filter(|(name, _)| kinds.iter().any(|kind| name.ends_with(kind)));
        let text = |(name, bytes)| {
            Ok((format!("expected.{name}"), String::from_utf8(bytes).map_err(std::io::Error::other)?))
        };
        kept.map(text).collect()
    }

    fn layout_now(&self, text: &str, files: &Files) -> Result<Vec<(String, Vec<u8>)>> {
        let (layout, job) = api::read_and_lay_out(text, files)
            .map_err(|problems| std::io::Error::other(format!("{}: {problems:#?}", self.name)))?;
        let mut files = report::layout_files(&layout);
        files.push(("laid.json".to_owned(), report::laid_document(&job).into_bytes()));
        Ok(files)
    }

    /// The expected files that it has, by name.
    ///
    /// # Errors
    ///
    /// When its folder can't be read.
    pub fn expected_files(&self) -> Result<Vec<String>> {
        let mut names = Vec::new();
        for entry in fs::read_dir(&self.folder)? {
            let name = entry?.file_name().to_string_lossy().into_owned();
            if name.starts_with("expected.") {
                names.push(name);
            }
        }
        names.sort();
        Ok(names)
    }
}
