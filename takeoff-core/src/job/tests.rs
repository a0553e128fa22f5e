//! The job file from outside: every code, strict reading, CSV, outlines, and the schema.
mod cases;
mod csv;
mod fuzz;
mod items;
mod layout;
mod outline;
mod reading;
mod schema;
mod slopes;
mod write_back;

use serde_json::Value;

use super::{Files, Job};
use crate::model::{Problem, Problems};

/// The plain gable without its prices, a good job to spoil.
fn good() -> Value {
    let job = serde_json::from_str(include_str!("../../../fixtures/plain-gable/job.json")).unwrap();
    with(job, &serde_json::json!({ "/prices": null, "/bid": null }))
}

/// The job with values put at JSON Pointers; `null` takes the value away, `-` adds to a list.
fn with(mut job: Value, changes: &Value) -> Value {
    for (pointer, value) in changes.as_object().unwrap() {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        let parent = job.pointer_mut(parent).unwrap_or_else(|| panic!("nothing at {parent}"));
        match parent {
            Value::Object(fields) if value.is_null() => {
                fields.remove(key).unwrap_or_else(|| panic!("nothing at {pointer}"));
            }
            Value::Object(fields) => {
                fields.insert(key.to_owned(), value.clone());
            }
            Value::Array(items) if key == "-" => items.push(value.clone()),
            Value::Array(items) => items[key.parse::<usize>().unwrap()] = value.clone(),
            _ => panic!("nothing goes into {parent}"),
        }
    }
    job
}

fn read(job: &Value) -> Result<Job, Problems> {
    Job::read(&job.to_string(), &Files::new())
}

fn read_with(job: &Value, files: &[(&str, &str)]) -> Result<Job, Problems> {
    let files = files.iter().map(|(name, text)| (name.to_string(), text.to_string())).collect();
    Job::read(&job.to_string(), &files)
}

fn codes(problems: &[Problem]) -> Vec<(&str, &str)> {
    problems.iter().map(|problem| (problem.code.as_str(), problem.path.as_str())).collect()
}
