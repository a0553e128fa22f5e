//! A problem or a finding, as data in every language.
use schemars::JsonSchema;
use serde::Serialize;

use super::codes::Code;

/// How grave a [`Problem`] is.
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
pub struct Problem {
    /// A stable name of the kind of problem, such as `unknown-field`.
    pub code: String,
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
    /// A finding of the takeoff, at the place in the job file that it is about.
    pub(crate) fn finding(code: &str, message: String, help: &str, path: &str) -> Problem {
        let [code, help, path] = [code, help, path].map(str::to_owned);
        Problem { code, message, help, path, severity: Severity::Finding }
    }
}

/// A problem of a known kind at a JSON Pointer.
pub(crate) fn problem(
    code: Code,
    path: String,
    message: impl Into<String>,
    help: impl Into<String>,
) -> Problem {
    Problem {
        code: code.text().to_owned(),
        message: message.into(),
        help: help.into(),
        path,
        severity: code.severity(),
    }
}
