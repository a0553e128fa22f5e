//! The JSON Schema of a job file.
use serde_json::Value;

use super::super::{EXAMPLE, Files, Job, schema};

/// Every object of the schema, with where it stands.
fn objects<'a>(value: &'a Value, at: String, found: &mut Vec<(String, &'a Value)>) {
    match value {
        Value::Object(fields) => {
            found.push((at.clone(), value));
            fields.iter().for_each(|(key, child)| objects(child, format!("{at}/{key}"), found));
        }
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, child)| objects(child, format!("{at}/{i}"), found));
        }
        _ => {}
    }
}

#[test]
fn every_field_is_described() {
    let schema = schema();
    let mut found = Vec::new();
    objects(&schema, String::new(), &mut found);
    let fields: Vec<_> = found.iter().filter(|(at, _)| at.rsplit('/').nth(1) == Some("properties")).collect();
    assert!(fields.len() > 100, "{}", fields.len());
    for (at, field) in fields {
        if at.starts_with("/$defs/CsvFile") {
            continue;
        }
        let about = field["description"].as_str().unwrap_or_else(|| panic!("{at} is not described"));
        assert!(about.ends_with('.') && !about.contains('\n'), "{at}: {about}");
    }
}

#[test]
fn every_object_is_closed() {
    let schema = schema();
    let mut found = Vec::new();
    objects(&schema, String::new(), &mut found);
    for (at, object) in found.iter().filter(|(_, object)| object["properties"].is_object()) {
        assert_eq!(object["additionalProperties"], Value::Bool(false), "{at}");
    }
}

#[test]
fn the_example_is_a_good_job() {
    let job = Job::read(EXAMPLE, &Files::new()).unwrap();
    assert_eq!(job.findings(), []);
    assert_eq!(schema()["examples"][0], serde_json::from_str::<Value>(EXAMPLE).unwrap());
}
