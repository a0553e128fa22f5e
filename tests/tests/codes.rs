//! Every code of a problem or finding has a case that gives it.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use takeoff_core::{Code, Job, Problems, Takeoff, takeoff};
use tilepost_tests::Case;

const ROOT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/..");

/// The takeoff of the plain gable with values put at JSON Pointers.
fn taken(changes: &Value) -> Result<Takeoff, Problems> {
    let case = Case::all().unwrap().into_iter().find(|case| case.name == "plain-gable").unwrap();
    let (text, files) = case.job().unwrap();
    let mut job: Value = serde_json::from_str(&text).unwrap();
    for (pointer, value) in changes.as_object().unwrap() {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        job.pointer_mut(parent).unwrap()[key] = value.clone();
    }
    takeoff(&Job::read(&job.to_string(), &files).unwrap())
}

/// The codes among its findings.
fn found(changes: &Value) -> BTreeSet<Code> {
    taken(changes).unwrap().findings.iter().map(|finding| finding.code).collect()
}

#[test]
fn a_finding_comes_of_each_change() {
    let cases = [
        // 5 in cover 2 1/2 in to each side of the centre, of which the opening takes 1 in: 1 1/2 in, and 3 in are asked.
        (Code::SideCoverShort, json!({ "/assemblies/post-7/top_flashing/width": "5 in" })),
        // A leaning post without clearance meets the edge of an ellipse as wide as itself.
        (
            Code::PostTooTight,
            json!({ "/assemblies/post-7/clearance": "0 in", "/assemblies/post-7/axis": "plumb",
                "/assemblies/post-7/hole_saws": null }),
        ),
        // A patch is 10 in of flange with 4 in on both sides wide, 18 in.
        (Code::PatchLongerThanRoll, json!({ "/underlayments/felt-30/roll_length": "12 in" })),
        // Two courses far above the lowest posts.
        (Code::NoTile, json!({ "/slopes/0/courses": { "noses": ["14 ft", "15 ft 1 in"] } })),
        (Code::NoLeastCost, json!({ "/practice/cost_of_short": "45.00", "/prices": null, "/bid": null })),
    ];
    let as_it_is = found(&json!({}));
    for (code, changes) in cases {
        assert!(!as_it_is.contains(&code) && found(&changes).contains(&code), "{code}");
    }
}

/// A record of which one tile handled says as much as the stated chances: no count of spares is nearly certain to suffice.
#[test]
fn a_service_level_beyond_the_record_is_refused() {
    let problems =
        taken(&json!({ "/practice/crew_record": { "weight": 1 }, "/practice/service_level": 0.999_999 }));
    assert_eq!(problems.map(drop).unwrap_err()[0].code, Code::BreakageTooWide);
}

/// The text of every test and every expected file.
fn cases(folder: &Path, in_tests: bool, text: &mut String) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap();
        if path.is_dir() {
            let skipped = ["target", "node_modules", ".git"].contains(&name);
            if !skipped {
                cases(&path, in_tests || name == "tests" || name == "fixtures", text);
            }
        } else if name == "tests.rs" || (in_tests && (name.ends_with(".rs") || name.ends_with(".json"))) {
            text.push_str(&fs::read_to_string(&path).unwrap());
        }
    }
}

#[test]
fn every_code_stands_in_a_test_or_an_expected_file() {
    let mut text = String::new();
    for folder in ["takeoff-core/src", "tests/tests", "fixtures"] {
        cases(&Path::new(ROOT).join(folder), folder != "takeoff-core/src", &mut text);
    }
    // What `job/tests/cases.rs` lists without a case is none.
    let listed = text.split_once("const BEHIND").and_then(|(_, rest)| rest.split_once("];")).unwrap().0;
    let text = text.replace(listed, "");
    let is_cased = |code: &&Code| {
        let variant = format!("Code::{code:?}");
        text.contains(&format!("\"{code}\"")) || text.contains(&variant)
    };
    let without: Vec<&Code> = Code::ALL.iter().filter(|code| !is_cased(code)).collect();
    assert!(without.is_empty(), "no case for {without:?}");
}

#[test]
fn the_table_holds_each_code_once_with_a_meaning() {
    let texts: BTreeSet<&str> = Code::ALL.iter().map(|code| code.as_str()).collect();
    assert_eq!(texts.len(), Code::ALL.len());
    for code in Code::ALL {
        let meaning = code.meaning();
        assert!(meaning.len() > 10 && meaning.ends_with('.') && !meaning.contains('\n'), "{code}: {meaning}");
    }
    for code in takeoff_core::units::CODES {
        assert!(texts.contains(code), "{code} is not in the table");
    }
}
