//! A finished layout.
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::types::PyType;
use takeoff_core::report::{self, tables};
use takeoff_core::{Files, LaidJob, api, layout};

use crate::problems::refused;
use crate::table::Table;

/// Where the posts of a job's arrays go so that they cost least, and why.
///
/// `tilepost.Job.layout` makes one. It does not change; every table is made when it is asked for.
#[pyclass(frozen, subclass, module = "tilepost._tilepost")]
pub(crate) struct Layout {
    job: String,
    files: Files,
    layout: layout::Layout,
    laid: LaidJob,
}

#[pymethods]
impl Layout {
    /// The layout of a job file's text, with the texts of the files that it names by their names.
    ///
    /// Raises `JobError` if the job has problems, or no layout.
    #[new]
    fn new(py: Python<'_>, job: String, files: Files) -> PyResult<Layout> {
        match py.detach(|| api::read_and_lay_out(&job, &files)) {
            Ok((layout, laid)) => Ok(Layout { job, files, layout, laid }),
            Err(problems) => Err(refused(py, &problems)),
        }
    }

    /// The posts of the rails, a row each.
    #[getter]
    fn posts(&self) -> PyResult<Table> {
        tables::layout(&self.layout).try_into()
    }

    /// The arrays that have rails, each by its slope's name and its own, in the job's order.
    #[getter]
    fn arrays(&self) -> Vec<(&str, &str)> {
        self.layout.arrays.iter().map(|array| (array.slope.as_str(), array.array.as_str())).collect()
    }

    /// The text of the job file as laid out: the same bytes as the command writes.
    #[getter]
    fn job_text(&self) -> String {
        report::laid_document(&self.laid)
    }

    /// The texts of the files that the job names, by their names.
    #[getter]
    fn files(&self) -> Files {
        self.files.clone()
    }

    /// Everything as JSON text: the same bytes as the command writes.
    fn to_json(&self) -> String {
        report::layout_document(&self.layout)
    }

    /// What an array costs over its allowed shift, as SVG text.
    ///
    /// Raises `KeyError` if the slope has no array of that name with rails.
    fn to_svg(&self, slope: &str, array: &str) -> PyResult<String> {
        report::shift_map(&self.layout, slope, array)
            .ok_or_else(|| PyKeyError::new_err(format!("`{slope}` has no array `{array}` with rails")))
    }

    /// What the command shows, which fits 80 columns.
    fn summary(&self) -> String {
        report::layout(&self.layout)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Layout>) -> (Bound<'py, PyType>, (String, Files)) {
        (slf.get_type(), (slf.get().job.clone(), slf.get().files.clone()))
    }

    fn __repr__(&self) -> String {
        format!("<tilepost.Layout of {}: {} arrays>", self.layout.job, self.layout.arrays.len())
    }
}
