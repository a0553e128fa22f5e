//! Problems as a Python exception.
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use takeoff_core::Problem;

pyo3::import_exception!(tilepost.errors, JobError);

/// `JobError` with the problems as Python has them: a list of dictionaries.
pub(crate) fn refused(py: Python<'_>, problems: &[Problem]) -> PyErr {
    let dictionaries = || -> PyResult<Py<PyAny>> {
        let text =
            serde_json::to_string(problems).map_err(|error| PyValueError::new_err(error.to_string()))?;
        Ok(py.import("json")?.call_method1("loads", (text,))?.unbind())
    };
    dictionaries().map_or_else(|error| error, |problems| JobError::new_err((problems,)))
}
