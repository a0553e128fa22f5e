//! The core's entries for Python.
//!
//! What is in Rust here is what Python can't do: call the core without the interpreter's lock and hand
//! out tables as Arrow. `Job`, its files and its errors are Python, in `python/tilepost`.
mod layout;
mod problems;
mod table;
mod takeoff;

use pyo3::prelude::*;
use takeoff_core::{Files, api};

/// The takeoff of a job as the text of `{"ok": true, "takeoff": …}` or `{"ok": false, "problems": […]}`.
#[pyfunction]
fn takeoff_json(py: Python<'_>, job: &str, files: Files) -> String {
    py.detach(|| api::takeoff_json(job, &files))
}

/// Every problem of a job, as the text of `{"ok": …, "problems": […]}`.
#[pyfunction]
fn check_json(py: Python<'_>, job: &str, files: Files) -> String {
    py.detach(|| api::check_json(job, &files))
}

/// One order for several jobs, each with the texts of its files, as the text of `{"ok": true, "order": …}` or
/// `{"ok": false, "problems": […]}`.
#[pyfunction]
fn order_json(py: Python<'_>, jobs: Vec<(String, Files)>) -> String {
    py.detach(|| api::order_json(&jobs))
}

/// The layout of a job's arrays and the job as laid out, as the text of `{"ok": true, "layout": …, "job": …}` or
/// `{"ok": false, "problems": […]}`.
#[pyfunction]
fn layout_json(py: Python<'_>, job: &str, files: Files) -> String {
    py.detach(|| api::layout_json(job, &files))
}

/// The JSON Schema of the job file, as text.
#[pyfunction]
fn schema_json() -> String {
    api::schema_json()
}

/// The names of the files that a job names, as the text of a list.
#[pyfunction]
fn files_named_json(job: &str) -> String {
    api::files_named_json(job)
}

/// The compiled part of `tilepost`.
#[pymodule(gil_used = false)]
mod _tilepost {
    #[pymodule_export]
    use super::layout::Layout;
    #[pymodule_export]
    use super::table::Table;
    #[pymodule_export]
    use super::takeoff::Takeoff;
    #[pymodule_export]
    use super::{check_json, files_named_json, layout_json, order_json, schema_json, takeoff_json};
}
