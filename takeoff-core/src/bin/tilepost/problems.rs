//! Problems and findings, told to a person.
use std::fmt::Write;
use std::path::Path;

use takeoff_core::job::{Problem, Severity};

/// A block a problem: where, what, and what mends it.
pub(crate) fn told(job: &Path, problems: &[Problem]) -> String {
    let mut text = String::new();
    for Problem { code, message, help, path, severity } in problems {
        let kind = match severity {
            Severity::Error => "error",
            Severity::Finding => "finding",
        };
        let place = if path.is_empty() { "the whole file" } else { path };
        // Writing to a String can't fail.
        let _ = writeln!(text, "{kind} in {} at {place}: {message} [{code}]\n    {help}", job.display());
    }
    text
}

/// `3 errors`, `1 finding`.
pub(crate) fn counted(problems: &[Problem]) -> String {
    let errors = problems.iter().filter(|problem| problem.severity == Severity::Error).count();
    let findings = problems.len() - errors;
    let plural = |count: usize, noun: &str| format!("{count} {noun}{}", if count == 1 { "" } else { "s" });
    match (errors, findings) {
        (0, 0) => "no problems".to_owned(),
        (_, 0) => plural(errors, "error"),
        (0, _) => plural(findings, "finding"),
        _ => format!("{}, {}", plural(errors, "error"), plural(findings, "finding")),
    }
}
