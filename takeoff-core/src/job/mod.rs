//! The job: what is written in a job file, every problem in it, and the validated model.
//!
//! Text goes through three steps, and each step collects all its errors: `parse` makes a document of the text,
//! `fields` reads typed fields out of it, `check` weighs them against each other and makes the model. `write_back`
//! goes the other way: a job with other posts and arrays becomes a job file again.
mod as_built;
mod check;
mod fields;
mod parse;
#[cfg(test)]
mod tests;
mod write_back;

pub use parse::decode::Files;
pub use parse::text::{MOST_BYTES, utf8_text};
#[cfg(feature = "command")]
pub use write_back::write_back_toml;
pub use write_back::{LaidJob, write_back};

use crate::model::{Job, Problem, Problems};
use fields::raw::Job as Written;
use parse::decode::{Read, Reader};
use parse::document::{At, Document};
use parse::text;

/// A small job file: one post on one slope.
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::model::Job;
/// assert!(Job::read(EXAMPLE, &Files::new()).is_ok());
/// ```
pub const EXAMPLE: &str = include_str!("example.json");

impl Job {
    /// Reads a job file, JSON, with the texts of the files it names (see [`Job::files_named`]).
    ///
    /// # Errors
    ///
    /// Everything that is wrong with the job, in the order of the text; what is wrong inside a CSV file stands
    /// where the job names the file.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::job::Files;
    /// use takeoff_core::model::Job;
    /// let problems = Job::read(r#"{"format": "tilepost-job/1", "naem": "Alder Court 7"}"#, &Files::new()).unwrap_err();
    /// assert_eq!(problems[0].path, "");
    /// assert_eq!(problems[0].message, "`name` is missing");
    /// let unknown = problems.iter().find(|problem| problem.code == "unknown-field").unwrap();
    /// assert_eq!(unknown.path, "/naem");
    /// assert_eq!(unknown.help, "did you mean `name`?");
    /// ```
    pub fn read(text: &str, files: &Files) -> Result<Job, Problems> {
        Job::from_tree(text::json(text), files)
    }

    /// Reads a job file from its bytes, which have to be UTF-8.
    ///
    /// # Errors
    ///
    /// As [`Job::read`].
    pub fn read_bytes(bytes: &[u8], files: &Files) -> Result<Job, Problems> {
        Job::read(text::utf8_text(bytes, "the file").map_err(Problems::from)?, files)
    }

    /// Reads a job file written in TOML.
    ///
    /// # Errors
    ///
    /// As [`Job::read`].
    #[cfg(feature = "command")]
    pub fn read_toml(text: &str, files: &Files) -> Result<Job, Problems> {
        Job::from_tree(text::toml(text), files)
    }

    /// The files that a job file names, relative to it, for the caller to load; none where it can't be read.
    /// A name that would lead out of the job's folder is left out: reading the job reports it.
    ///
    /// ```
    /// let text = r#"{"slopes": [{"posts": {"csv": "posts.csv"}}, {"posts": {"csv": "../keys"}}]}"#;
    /// assert_eq!(takeoff_core::model::Job::files_named(text), ["posts.csv"]);
    /// ```
    pub fn files_named(text: &str) -> Vec<String> {
        text::json(text).map_or(Vec::new(), |(tree, _)| names(&tree))
    }

    /// As [`Job::files_named`], of a job written in TOML.
    #[cfg(feature = "command")]
    pub fn files_named_toml(text: &str) -> Vec<String> {
        text::toml(text).map_or(Vec::new(), |(tree, _)| names(&tree))
    }

    /// Findings about the job file itself, in the order of the text.
    pub fn findings(&self) -> &[Problem] {
        &self.findings
    }

    fn from_tree(read: text::Outcome<'_>, files: &Files) -> Result<Job, Problems> {
        let (tree, duplicates) = read.map_err(Problems::from)?;
        let mut reader = Reader::new(&tree, files);
        for (at, problem) in duplicates {
            reader.keep(at, problem);
        }
        let job = Written::read(At::ROOT, &mut reader).and_then(|written| check::job(written, &mut reader));
        match (job, reader.into_reports()) {
            (Some(job), (errors, findings)) if errors.is_empty() => Ok(Job { findings, ..job }),
            (_, (errors, _)) => Err(errors.into()),
        }
    }
}

fn names(tree: &Document<'_>) -> Vec<String> {
    let files = Files::new();
    let mut reader = Reader::new(tree, &files);
    Written::read(At::ROOT, &mut reader);
    let mut names = reader.files_named;
    names.sort();
    names.dedup();
    names
}

/// The JSON Schema of a job file, with a small job as an example.
///
/// ```
/// let schema = takeoff_core::job::schema();
/// assert_eq!(schema["properties"]["format"]["const"], "tilepost-job/1");
/// ```
pub fn schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(Written);
    schema.insert("title".to_owned(), "tilepost job".into());
    let example: serde_json::Value = serde_json::from_str(EXAMPLE).unwrap_or_default();
    schema.insert("examples".to_owned(), serde_json::Value::Array(vec![example]));
    unwrapped(&mut schema);
    schema.to_value()
}

/// Descriptions with the line ends of this crate's source taken out; paragraphs stay.
fn unwrapped(schema: &mut schemars::Schema) {
    if let Some(serde_json::Value::String(text)) = schema.get_mut("description") {
        *text =
            text.split("\n\n").map(|paragraph| paragraph.replace('\n', " ")).collect::<Vec<_>>().join("\n\n");
    }
    schemars::transform::transform_subschemas(&mut unwrapped, schema);
}
