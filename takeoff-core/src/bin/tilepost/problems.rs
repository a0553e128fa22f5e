//! Problems and findings, told to a person.
use std::fmt::Write;
use std::ops::Range;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use takeoff_core::{Problem, Severity};

use crate::places::places;
use crate::read::Reading;

/// A block a problem: what is wrong, the line of the job file that it is about, and what mends it.
pub(crate) fn told(reading: &Reading, problems: &[Problem]) -> String {
    let Reading { path, text, notation, .. } = reading;
    let pointers: Vec<&str> = problems.iter().map(|problem| problem.path.as_str()).collect();
    let file = path.display().to_string();
    let renderer = Renderer::plain();
    let mut told = String::new();
    for (problem, place) in problems.iter().zip(places(text, *notation, &pointers)) {
        let level = match problem.severity {
            Severity::Error => Level::ERROR,
            Severity::Finding => Level::WARNING.with_name("finding"),
        };
        let title = level.primary_title(problem.message.as_str()).id(problem.code.as_str());
        let report = match place.map(|place| first_line(text, place)) {
            Some(place) => {
                let mark = AnnotationKind::Primary.span(place).label(problem.path.as_str());
                title.element(Snippet::source(text.as_str()).path(file.as_str()).annotation(mark))
            }
            None => Group::with_title(title).element(annotate_snippets::Origin::path(file.as_str())),
        };
        let report = report.element(Level::HELP.message(problem.help.as_str()));
        // Writing to a String can't fail.
        let _ = writeln!(told, "{}\n", renderer.render(&[report]));
    }
    told
}

/// Tells the problems of a job to standard error, and how many there are.
pub(crate) fn tell(reading: &Reading, problems: &[Problem]) {
    eprint!("{}", told(reading, problems));
    eprintln!("{}: {}", reading.path.display(), counted(problems));
}

/// Problems of several jobs together, which are in no one file.
pub(crate) fn alone(problems: &[Problem]) -> String {
    let told = |Problem { code, message, help, .. }: &Problem| {
        let title = Level::ERROR.primary_title(message.as_str()).id(code.as_str());
        let report = Group::with_title(title).element(Level::HELP.message(help.as_str()));
        format!("{}\n\n", Renderer::plain().render(&[report]))
    };
    problems.iter().map(told).collect()
}

/// The part of a place that is on its first line: a long object is marked where it begins.
fn first_line(text: &str, place: Range<usize>) -> Range<usize> {
    let length = text.get(place.clone()).and_then(|value| value.find('\n')).unwrap_or(place.len());
    place.start..place.start + length
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
