//! Names of items beside those of the lines that a takeoff works out.
use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::super::{Files, Job};
use super::{codes, read, with};
use crate::materials::Material;
use crate::takeoff::takeoff;

/// Jobs whose takeoffs have every kind of line: felt, cement and mesh, boards, battens, blades, pans and covers.
fn jobs() -> Vec<Value> {
    let texts = [
        include_str!("../../../../fixtures/plain-gable/job.json"),
        include_str!("../../../../fixtures/pan-cover-plumb/job.json"),
        include_str!("../../../../fixtures/three-course-porch/job.json"),
        include_str!("../../../../fixtures/double-lap-cottage/job.json"),
    ];
    let job = |text: &str| {
        let mut job: Value = serde_json::from_str(text).unwrap();
        let fields = job.as_object_mut().unwrap();
        fields.remove("prices");
        fields.remove("bid");
        job["practice"]["blade_life"] = json!("1 m");
        job
    };
    texts.map(job).into()
}

#[test]
fn no_item_is_called_as_a_line_of_the_takeoff() {
    let mut lines = BTreeSet::new();
    for written in jobs() {
        let job = Job::read(&written.to_string(), &Files::new()).unwrap();
        let assemblies = job.assemblies.iter();
        let brought: BTreeSet<&str> = assemblies
            .flat_map(|assembly| assembly.items.iter().chain(&assembly.blocking_items))
            .map(|item| item.item.as_str())
            .collect();
        let assembly = &job.assemblies[0].name;
        for line in takeoff(&job).unwrap().materials {
            let items =
                json!({ format!("/assemblies/{assembly}/items"): [{ "item": line.item, "count": 1 }] });
            let found = read(&with(written.clone(), &items));
            let adds_to_it = Material::from_item(&line.item.name(), &job) == line.item;
            if brought.contains(line.item.name().as_str()) || adds_to_it {
                assert!(found.is_ok(), "{}", line.item.name());
                continue;
            }
            let problems =
                found.err().unwrap_or_else(|| panic!("`{}` is taken for an item", line.item.name()));
            let at = format!("/assemblies/{assembly}/items/0/item");
            assert_eq!(codes(&problems), [("item-is-worked-out", at.as_str())], "{}", line.item.name());
            lines.insert(line.item.name());
        }
    }
    for line in Material::WORKED_OUT.map(|material| material.name()) {
        assert!(lines.contains(&line), "no fixture has a line `{line}`: {lines:?}");
    }
    assert!(lines.iter().any(|line| line.starts_with("spare tile ")), "{lines:?}");
    for end in [", patches", ", rolls", ", pan", ", cover"] {
        assert!(lines.iter().any(|line| line.ends_with(end)), "{end}: {lines:?}");
    }
}
