//! The answers of the JSON-text entries, as values.
use serde_json::Value;
use takeoff_core::{Files, api};

/// The takeoff of a job that has no problem.
///
/// # Panics
///
/// When it has one, which is shown.
#[allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]
pub fn takeoff_of(job: &Value) -> Value {
    let answer = api::takeoff_json(&job.to_string(), &Files::new());
    let mut answer: Value = serde_json::from_str(&answer).expect("an answer is JSON");
    if answer["ok"] != true {
        panic!("the job has problems: {answer:#}\n{job:#}");
    }
    answer["takeoff"].take()
}

/// The codes of what a check finds in a job.
///
/// # Panics
///
/// When the answer is no JSON.
#[allow(clippy::expect_used, reason = "a test fails by panicking")]
pub fn codes_of(job: &Value) -> Vec<String> {
    let answer = api::check_json(&job.to_string(), &Files::new());
    let answer: Value = serde_json::from_str(&answer).expect("an answer is JSON");
    let problems = answer["problems"].as_array().into_iter().flatten();
    problems.filter_map(|problem| Some(problem["code"].as_str()?.to_owned())).collect()
}
