//! A finished takeoff.
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyType};
use takeoff_core::report::{self, document, tables};
use takeoff_core::{Files, api, compare, takeoff};

use crate::problems::refused;
use crate::table::Table;

/// What a job takes: cuts, tiles taken up, deck work and what to bring.
///
/// `tilepost.Job.takeoff` makes one. It does not change; every table is made when it is asked for.
#[pyclass(frozen, subclass, module = "tilepost._tilepost")]
pub(crate) struct Takeoff {
    job: String,
    files: Files,
    takeoff: takeoff::Takeoff,
    /// What is shown of it.
    document: document::Takeoff,
}

#[pymethods]
impl Takeoff {
    /// The takeoff of a job file's text, with the texts of the files that it names by their names.
    ///
    /// Raises `JobError` if the job has problems.
    #[new]
    fn new(py: Python<'_>, job: String, files: Files) -> PyResult<Takeoff> {
        match py.detach(|| api::read_and_take_off(&job, &files)) {
            Ok(takeoff) => Ok(Takeoff { job, files, document: document::Takeoff::from(&takeoff), takeoff }),
            Err(problems) => Err(refused(py, &problems)),
        }
    }

    /// What to bring, a row an item.
    #[getter]
    fn materials(&self) -> PyResult<Table> {
        tables::materials(&self.document).try_into()
    }

    /// The posts, a row each.
    #[getter]
    fn posts(&self) -> PyResult<Table> {
        tables::posts(&self.document).try_into()
    }

    /// The cuts, a row a cut tile.
    #[getter]
    fn cuts(&self) -> PyResult<Table> {
        tables::cuts(&self.document).try_into()
    }

    /// The tiles handled, a row each.
    #[getter]
    fn tiles(&self) -> PyResult<Table> {
        tables::tiles(&self.document).try_into()
    }

    /// The patches of underlayment, a row each.
    #[getter]
    fn patches(&self) -> PyResult<Table> {
        tables::patches(&self.document).try_into()
    }

    /// The spare tiles, a row a kind of piece.
    #[getter]
    fn spares(&self) -> PyResult<Table> {
        tables::spares(&self.document).try_into()
    }

    /// Where the pieces of the patches are cut from rolls, a row a piece.
    #[getter]
    fn cutting(&self) -> PyResult<Table> {
        tables::cutting(&self.document).try_into()
    }

    /// The screening of the lags against wind uplift, a row a post; no rows where the job asks for none.
    #[getter]
    fn screening(&self) -> PyResult<Table> {
        tables::screening(&self.document).try_into()
    }

    /// What is bought, a row a pack, and what has no price; no rows where the job asks for no bid.
    #[getter]
    fn bid(&self) -> PyResult<Table> {
        tables::bid(&self.document).try_into()
    }

    /// The labour, a row an action; no rows where the job bids none.
    #[getter]
    fn labour(&self) -> PyResult<Table> {
        tables::labour(&self.document).try_into()
    }

    /// The names of the slopes, in the job's order.
    #[getter]
    fn slopes(&self) -> Vec<&str> {
        self.takeoff.slopes.iter().map(|slope| slope.name.as_str()).collect()
    }

    /// Everything, with the basis of each number, as JSON text: the same bytes as the command writes.
    fn to_json(&self) -> String {
        report::document(&self.document)
    }

    /// The roof map of a slope as SVG text.
    ///
    /// Raises `KeyError` if the job has no slope of that name.
    fn to_svg(&self, slope: &str) -> PyResult<String> {
        report::roof_map(&self.document, slope)
            .ok_or_else(|| PyKeyError::new_err(format!("the job has no slope `{slope}`")))
    }

    /// The workbook as the bytes of an xlsx file: the same as the command writes to `bid.xlsx`.
    fn xlsx<'py>(&self, py: Python<'py>) -> Bound<'py, PyBytes> {
        let bytes = py.detach(|| report::workbook(&self.document));
        PyBytes::new(py, &bytes)
    }

    /// The report as one HTML page that needs nothing else, for the screen and for paper: the same bytes as the
    /// command writes.
    fn to_html(&self) -> String {
        report::page(&self.document)
    }

    /// The summary that the command shows, which fits 80 columns.
    fn summary(&self) -> String {
        report::summary(&self.document)
    }

    /// What changed between this takeoff, as bid, and another, as built, as JSON text.
    fn compare_json(&self, as_built: &Takeoff) -> String {
        api::compared_answer(&Ok(compare(&self.takeoff, &as_built.takeoff)))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Takeoff>) -> (Bound<'py, PyType>, (String, Files)) {
        (slf.get_type(), (slf.get().job.clone(), slf.get().files.clone()))
    }

    fn __repr__(&self) -> String {
        format!("<tilepost.Takeoff of {}: {} posts>", self.takeoff.job, self.takeoff.counts.posts)
    }
}
