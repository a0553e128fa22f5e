//! Problems of a layout, as errors.
use crate::model::{Problem, Severity};

/// An error with its code, message, help and JSON Pointer path.
pub(crate) fn error(
    code: &str,
    message: impl Into<String>,
    help: impl Into<String>,
    path: impl Into<String>,
) -> Problem {
    Problem {
        code: code.to_owned(),
        message: message.into(),
        help: help.into(),
        path: path.into(),
        severity: Severity::Error,
    }
}
