//! Problems and findings, as data in every language.
use std::fmt;
use std::ops::Deref;

use schemars::JsonSchema;
use serde::Serialize;

use super::Code;

/// Severity of a [`Problem`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// The job can't be taken off until it is mended.
    Error,
    /// Odd but real: the takeoff stands, and somebody should look.
    Finding,
}

/// What is wrong or odd, where, and what mends it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[non_exhaustive]
pub struct Problem {
    /// A stable name of the kind of problem, such as `unknown-field`.
    pub code: Code,
    /// What is wrong, with the user's input in backticks.
    pub message: String,
    /// What mends it.
    pub help: String,
    /// Where: a JSON Pointer (RFC 6901) into the job file.
    pub path: String,
    /// Error or finding.
    pub severity: Severity,
}

impl Problem {
    /// A problem at a JSON Pointer, as severe as its code.
    ///
    /// ```
    /// use takeoff_core::{Code, Problem, Severity};
    /// let problem = Problem::new(Code::NoTile, "`P7` meets no tile", "move it under tile", "/slopes/0/posts/6");
    /// assert_eq!(problem.severity, Severity::Finding);
    /// assert_eq!(problem.to_string(), "finding[no-tile] at /slopes/0/posts/6: `P7` meets no tile; move it under tile");
    /// ```
    pub fn new(
        code: Code,
        message: impl Into<String>,
        help: impl Into<String>,
        path: impl Into<String>,
    ) -> Problem {
        let severity = code.severity();
        Problem { code, message: message.into(), help: help.into(), path: path.into(), severity }
    }
}

impl fmt::Display for Problem {
    /// Severity, code, place, message and help, in one line.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let severity = match self.severity {
            Severity::Error => "error",
            Severity::Finding => "finding",
        };
        write!(f, "{severity}[{}]", self.code)?;
        if !self.path.is_empty() {
            write!(f, " at {}", self.path)?;
        }
        write!(f, ": {}; {}", self.message, self.help)
    }
}

/// Everything that is wrong, in the order of the job: the error of every function that refuses a job.
///
/// # Example
///
/// ```
/// use takeoff_core::{Files, Job, Problems};
/// let problems: Problems = Job::read("{}", &Files::new()).unwrap_err();
/// assert_eq!(problems[0].code, "missing-field");
/// assert!(problems.to_string().starts_with("error[missing-field]: `format` is missing"));
/// let error: Box<dyn std::error::Error> = problems.into();
/// assert!(error.downcast_ref::<Problems>().is_some());
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Problems(Vec<Problem>);

impl Problems {
    /// No problem at all.
    pub fn new() -> Problems {
        Problems::default()
    }

    /// Adds a problem behind the others.
    pub fn push(&mut self, problem: Problem) {
        self.0.push(problem);
    }

    /// The problems as a list.
    pub fn into_vec(self) -> Vec<Problem> {
        self.0
    }
}

impl Deref for Problems {
    type Target = [Problem];

    fn deref(&self) -> &[Problem] {
        &self.0
    }
}

impl From<Vec<Problem>> for Problems {
    fn from(problems: Vec<Problem>) -> Problems {
        Problems(problems)
    }
}

impl From<Problem> for Problems {
    fn from(problem: Problem) -> Problems {
        Problems(vec![problem])
    }
}

impl Extend<Problem> for Problems {
    fn extend<I: IntoIterator<Item = Problem>>(&mut self, problems: I) {
        self.0.extend(problems);
    }
}

impl FromIterator<Problem> for Problems {
    fn from_iter<I: IntoIterator<Item = Problem>>(problems: I) -> Problems {
        Problems(problems.into_iter().collect())
    }
}

impl IntoIterator for Problems {
    type Item = Problem;
    type IntoIter = std::vec::IntoIter<Problem>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a> IntoIterator for &'a Problems {
    type Item = &'a Problem;
    type IntoIter = std::slice::Iter<'a, Problem>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl fmt::Display for Problems {
    /// A line for each problem.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, problem) in self.0.iter().enumerate() {
            if i > 0 {
                writeln!(f)?;
            }
            problem.fmt(f)?;
        }
        Ok(())
    }
}

impl std::error::Error for Problems {}
