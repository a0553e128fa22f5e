//! The core's text entries for JavaScript: strings in, strings out, nothing kept between calls.
//!
//! `files` is the text of a JSON object with the files that a job names: name to text. `takeoff_core::api` describes
//! the entries, their documents and their problems.
use takeoff_core::{Files, api};
use wasm_bindgen::prelude::*;

/// The takeoff of a job, or its problems.
#[wasm_bindgen]
pub fn takeoff_json(job: &str, files: &str) -> Result<String, JsError> {
    Ok(api::takeoff_json(job, &read(files)?))
}

/// Every problem of a job.
#[wasm_bindgen]
pub fn check_json(job: &str, files: &str) -> Result<String, JsError> {
    Ok(api::check_json(job, &read(files)?))
}

/// The layout of a job's arrays with the job as laid out, or the problems in its way.
#[wasm_bindgen]
pub fn layout_json(job: &str, files: &str) -> Result<String, JsError> {
    Ok(api::layout_json(job, &read(files)?))
}

/// What changed between two jobs, as bid and as built, or the problems of either.
#[wasm_bindgen]
pub fn compare_json(
    bid: &str,
    bid_files: &str,
    as_built: &str,
    as_built_files: &str,
) -> Result<String, JsError> {
    Ok(api::compare_json(bid, &read(bid_files)?, as_built, &read(as_built_files)?))
}

/// One order for several jobs, given as the text of a JSON list: a job file's text and an object of its files for each.
#[wasm_bindgen]
pub fn order_json(jobs: &str) -> Result<String, JsError> {
    let jobs: Vec<(String, Files)> = serde_json::from_str(jobs)
        .map_err(|error| JsError::new(&format!("`jobs` is not a list of texts and files: {error}")))?;
    Ok(api::order_json(&jobs))
}

/// The JSON Schema of the job file.
#[wasm_bindgen]
pub fn schema_json() -> String {
    api::schema_json()
}

/// The names of the files that a job names.
#[wasm_bindgen]
pub fn files_named_json(job: &str) -> String {
    api::files_named_json(job)
}

/// The roof map of one slope as SVG; nothing where the job has problems or no slope of that name.
#[wasm_bindgen]
pub fn roof_map_svg(job: &str, files: &str, slope: &str) -> Result<Option<String>, JsError> {
    Ok(api::roof_map_svg(job, &read(files)?, slope))
}

/// The report as one HTML page; nothing where the job has problems.
#[wasm_bindgen]
pub fn report_html(job: &str, files: &str) -> Result<Option<String>, JsError> {
    Ok(api::report_html(job, &read(files)?))
}

/// The material list as CSV; nothing where the job has problems.
#[wasm_bindgen]
pub fn materials_csv(job: &str, files: &str) -> Result<Option<String>, JsError> {
    Ok(api::materials_csv(job, &read(files)?))
}

/// The takeoff, the material list in words and the roof map of one slope, or the problems of the job.
#[wasm_bindgen]
pub fn view_json(job: &str, files: &str, slope: &str) -> Result<String, JsError> {
    Ok(api::view_json(job, &read(files)?, slope))
}

/// Words for the kinds in a takeoff.
#[wasm_bindgen]
pub fn words_json() -> String {
    api::words_json()
}

fn read(files: &str) -> Result<Files, JsError> {
    serde_json::from_str(files)
        .map_err(|error| JsError::new(&format!("`files` is not an object of names and texts: {error}")))
}
