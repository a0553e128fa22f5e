//! Problems and findings of a job, as text for a person.
use std::fmt::Write;
use std::ops::Range;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use takeoff_core::model::{Problem, Severity};

use crate::console;
use crate::input::JobFile;
use crate::source_spans::source_spans;

/// One block per problem: message, line of the job file, and help.
pub(crate) fn text(file: &JobFile, problems: &[Problem]) -> String {
    let JobFile { path, text, notation, .. } = file;
    let pointers: Vec<&str> = problems.iter().map(|problem| problem.path.as_str()).collect();
    let file = path.display().to_string();
    let renderer = Renderer::plain();
    let mut blocks = String::new();
    for (problem, span) in problems.iter().zip(source_spans(text, *notation, &pointers)) {
        let level = match problem.severity {
            Severity::Error => Level::ERROR,
            Severity::Finding => Level::WARNING.with_name("finding"),
        };
        let title = level.primary_title(problem.message.as_str()).id(problem.code.as_str());
        let report = match span.map(|span| first_line(text, span)) {
            Some(span) => {
                let mark = AnnotationKind::Primary.span(span).label(problem.path.as_str());
                title.element(Snippet::source(text.as_str()).path(file.as_str()).annotation(mark))
            }
            None => Group::with_title(title).element(annotate_snippets::Origin::path(file.as_str())),
        };
        let report = report.element(Level::HELP.message(problem.help.as_str()));
        // Writing to a String can't fail.
        let _ = writeln!(blocks, "{}\n", renderer.render(&[report]));
    }
    blocks
}

/// Reports the problems of a job, and their count, on standard error.
pub(crate) fn report(file: &JobFile, problems: &[Problem]) {
    console::report(text(file, problems));
    report_count(file, problems);
}

/// Reports the count of problems of a job on standard error.
pub(crate) fn report_count(file: &JobFile, problems: &[Problem]) {
    console::report(format_args!("{}: {}\n", file.path.display(), count(problems)));
}

/// Reports problems that belong to several jobs together and so to no one file.
pub(crate) fn report_of_all(problems: &[Problem]) {
    for Problem { code, message, help, .. } in problems {
        let title = Level::ERROR.primary_title(message.as_str()).id(code.as_str());
        let block = Group::with_title(title).element(Level::HELP.message(help.as_str()));
        console::report(format_args!("{}\n\n", Renderer::plain().render(&[block])));
    }
}

/// First line of a span, so that a long object is marked only at its start.
fn first_line(text: &str, span: Range<usize>) -> Range<usize> {
    let length = text.get(span.clone()).and_then(|value| value.find('\n')).unwrap_or(span.len());
    span.start..span.start + length
}

/// `3 errors`, `1 finding`.
fn count(problems: &[Problem]) -> String {
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
