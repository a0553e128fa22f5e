//! The entries that other languages call: text in, text out, nothing but data crosses.
//!
//! Every answer is JSON: `{"ok": true, …}` or `{"ok": false, "problems": […]}`, a problem being
//! `{code, message, help, path, severity}`. The command, the Python package and the WASM package call these same
//! functions, so that they give the same bytes.
use serde::Serialize;

use crate::compare::{Comparison, compare};
use crate::job::{Files, LaidJob, write_back};
use crate::layout::{Layout, layout};
use crate::model::{Job, Problem, Problems};
use crate::order::{Order, Ordered, order};
use crate::report::{self, document, json_text as text};
use crate::takeoff::{Takeoff, takeoff};

#[derive(Serialize)]
#[serde(untagged)]
enum Answer<'a> {
    Takeoff { ok: bool, takeoff: &'a document::Takeoff },
    Comparison { ok: bool, comparison: &'a document::Comparison },
    Layout { ok: bool, layout: &'a Layout, job: &'a LaidJob },
    Order { ok: bool, order: &'a document::Order },
    View { ok: bool, takeoff: &'a document::Takeoff, bring: Vec<(String, String)>, map: Option<String> },
    Problems { ok: bool, problems: &'a [Problem] },
}

/// Reads a job and takes it off. `files` holds the texts of the files that the job names.
///
/// # Errors
///
/// Every problem in the job.
pub fn read_and_take_off(job: &str, files: &Files) -> Result<Takeoff, Problems> {
    takeoff(&Job::read(job, files)?)
}

/// Reads a job, takes it off and makes a document of the takeoff, for what [`report`] shows.
///
/// # Errors
///
/// Every problem in the job.
pub fn read_and_document(job: &str, files: &Files) -> Result<document::Takeoff, Problems> {
    Ok(document::Takeoff::from(&read_and_take_off(job, files)?))
}

/// The takeoff of a job file: `{"ok": true, "takeoff": {…}}` or `{"ok": false, "problems": […]}`.
///
/// # Example
///
/// ```
/// let answer = takeoff_core::api::takeoff_json("{}", &Default::default());
/// assert!(answer.starts_with("{\n  \"ok\": false"));
/// ```
pub fn takeoff_json(job: &str, files: &Files) -> String {
    answer(&read_and_document(job, files))
}

/// A takeoff, or the problems in its way, as [`takeoff_json`] gives it.
pub fn answer(taken: &Result<document::Takeoff, Problems>) -> String {
    match taken {
        Ok(takeoff) => text(&Answer::Takeoff { ok: true, takeoff }, 5),
        Err(problems) => text(&Answer::Problems { ok: false, problems }, 3),
    }
}

/// One takeoff as a page shows it: `{"ok": true, "takeoff": {…}, "bring": [[item, amount], …], "map": "<svg …"}`.
///
/// `bring` is the material list in words; `map` is the roof map of the slope of that name, `null` where the job has
/// none.
///
/// # Example
///
/// ```
/// use takeoff_core::{api, job::EXAMPLE};
/// let view = api::view_json(EXAMPLE, &Default::default(), "south");
/// assert!(view.contains("\"map\": \"<svg"));
/// ```
pub fn view_json(job: &str, files: &Files, slope: &str) -> String {
    match read_and_document(job, files) {
        Ok(takeoff) => {
            let (bring, map) = (report::brought(&takeoff), report::roof_map(&takeoff, slope));
            text(&Answer::View { ok: true, takeoff: &takeoff, bring, map }, 4)
        }
        Err(problems) => text(&Answer::Problems { ok: false, problems: &problems }, 3),
    }
}

/// Words for the kinds in a takeoff: `{"situations": {…}, "sides": {…}, "counts": {…}}`, in the order of showing.
pub fn words_json() -> String {
    text(&report::dictionary(), usize::MAX)
}

/// What changed between two jobs, as bid and as built: `{"ok": true, "comparison": {…}}`.
///
/// # Example
///
/// ```
/// use takeoff_core::{api, job::EXAMPLE};
/// let none = Default::default();
/// assert!(api::compare_json(EXAMPLE, &none, EXAMPLE, &none).contains("\"changed\": false"));
/// ```
pub fn compare_json(bid: &str, bid_files: &Files, as_built: &str, as_built_files: &Files) -> String {
    let compared = read_and_take_off(bid, bid_files)
        .and_then(|bid| Ok(compare(&bid, &read_and_take_off(as_built, as_built_files)?)));
    compared_answer(&compared)
}

/// A comparison, or the problems in its way, as [`compare_json`] gives it.
pub fn compared_answer(compared: &Result<Comparison, Problems>) -> String {
    let compared = compared.as_ref().map(document::Comparison::from);
    match &compared {
        Ok(comparison) => text(&Answer::Comparison { ok: true, comparison }, 3),
        Err(problems) => text(&Answer::Problems { ok: false, problems }, 3),
    }
}

/// Reads a job and lays its arrays out: the layout, and the job file of it.
///
/// # Errors
///
/// Every problem in the job, or why it has no layout.
pub fn read_and_lay_out(job: &str, files: &Files) -> Result<(Layout, LaidJob), Problems> {
    let read = Job::read(job, files)?;
    let out = layout(&read)?;
    Ok((out.layout, write_back(job, &read, &out.job)?))
}

/// The layout of a job's arrays, and the job as laid out: `{"ok": true, "layout": {…}, "job": {…}}`.
///
/// # Example
///
/// The example has neither prices nor labour: nothing to weigh places by.
///
/// ```
/// use takeoff_core::{api, job::EXAMPLE};
/// assert!(api::layout_json(EXAMPLE, &Default::default()).contains("no-costs"));
/// ```
pub fn layout_json(job: &str, files: &Files) -> String {
    layout_answer(&read_and_lay_out(job, files))
}

/// A layout, or the problems in its way, as [`layout_json`] gives it.
pub fn layout_answer(laid: &Result<(Layout, LaidJob), Problems>) -> String {
    match laid {
        Ok((layout, job)) => text(&Answer::Layout { ok: true, layout, job }, 5),
        Err(problems) => text(&Answer::Problems { ok: false, problems }, 3),
    }
}

/// One order for several jobs, each a job file with the texts of the files it names: `{"ok": true, "order": {…}}`.
///
/// # Example
///
/// ```
/// use takeoff_core::{api, job::EXAMPLE};
/// let order = api::order_json(&[(EXAMPLE.to_owned(), Default::default())]);
/// assert!(order.contains("\"jobs\": ["));
/// ```
pub fn order_json(jobs: &[(String, Files)]) -> String {
    ordered_answer(&read_and_order(jobs))
}

/// Reads some jobs, takes them off and orders for all of them.
///
/// # Errors
///
/// Every problem in every job, or what is wrong with them together.
pub fn read_and_order(jobs: &[(String, Files)]) -> Result<Order, Problems> {
    let mut taken = Vec::new();
    let mut problems = Problems::new();
    for (text, files) in jobs {
        match Job::read(text, files).and_then(|job| Ok((takeoff(&job)?, job))) {
            Ok(pair) => taken.push(pair),
            Err(found) => problems.extend(found),
        }
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let ordered: Vec<Ordered<'_>> = taken.iter().map(|(takeoff, job)| Ordered { job, takeoff }).collect();
    order(&ordered)
}

/// An order, or the problems in its way, as [`order_json`] gives it.
pub fn ordered_answer(ordered: &Result<Order, Problems>) -> String {
    let ordered = ordered.as_ref().map(document::Order::from);
    match &ordered {
        Ok(order) => text(&Answer::Order { ok: true, order }, 3),
        Err(problems) => text(&Answer::Problems { ok: false, problems }, 3),
    }
}

/// Every problem and finding in a job file: `{"ok": …, "problems": […]}`; `ok` when there is no error.
pub fn check_json(job: &str, files: &Files) -> String {
    checked(&Job::read(job, files))
}

/// A job's reading as [`check_json`] gives it.
pub fn checked(job: &Result<Job, Problems>) -> String {
    match job {
        Ok(job) => text(&Answer::Problems { ok: true, problems: job.findings() }, 3),
        Err(problems) => text(&Answer::Problems { ok: false, problems }, 3),
    }
}

/// The JSON Schema of a job file.
pub fn schema_json() -> String {
    text(&crate::job::schema(), usize::MAX)
}

/// The files that a job names, as a JSON array.
pub fn files_named_json(job: &str) -> String {
    text(&Job::files_named(job), 0)
}

/// The roof map of a slope; `None` where the job has a problem or no slope of that name.
pub fn roof_map_svg(job: &str, files: &Files, slope: &str) -> Option<String> {
    report::roof_map(&read_and_document(job, files).ok()?, slope)
}

/// The material list as CSV; `None` where the job has a problem.
pub fn materials_csv(job: &str, files: &Files) -> Option<String> {
    Some(report::tables::materials(&read_and_document(job, files).ok()?).csv())
}

/// The report as one HTML page; `None` where the job has a problem.
pub fn report_html(job: &str, files: &Files) -> Option<String> {
    Some(report::page(&read_and_document(job, files).ok()?))
}
