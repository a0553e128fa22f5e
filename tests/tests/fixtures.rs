//! Each fixture gives what is expected, from the command too.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::fs;

use takeoff_core::api;
use tilepost_tests::{Case, command};

const MEND: &str = "look whether it is meant; then: cargo run -p tilepost-tests --bin bless";

/// The fixtures; none is a failure.
fn cases() -> Vec<Case> {
    let cases = Case::all().unwrap();
    assert!(cases.len() >= 8, "{} fixtures are left", cases.len());
    cases
}

#[test]
fn takeoffs_are_as_expected() {
    for case in cases() {
        let now = case.expected_now().unwrap();
        let names: Vec<&String> = now.iter().map(|(name, _)| name).collect();
        let mut sorted = names.clone();
        sorted.sort();
        assert!(
            case.expected_files().unwrap().iter().eq(sorted),
            "{}: {names:?} are expected files",
            case.name
        );
        for (name, text) in &now {
            let expected = fs::read_to_string(case.folder.join(name)).unwrap();
            if let Some((line, (old, new))) = difference(&expected, text) {
                panic!("{}/{name} line {line}expected: {old}is now:   {new}\n{MEND}", case.name);
            }
        }
    }
}

/// The first line that is another, counted from 1.
fn difference<'a>(expected: &'a str, now: &'a str) -> Option<(usize, (&'a str, &'a str))> {
    if expected == now {
        return None;
    }
    let pairs = expected.lines().zip(now.lines()).enumerate();
    let first = pairs.map(|(at, pair)| (at + 1, pair)).find(|(_, (old, new))| old != new);
    Some(first.unwrap_or((
        expected.lines().count().min(now.lines().count()) + 1,
        ("another length", "another length"),
    )))
}

#[test]
fn the_command_gives_the_same_bytes() {
    let out = std::env::temp_dir().join(format!("tilepost-fixtures-{}", std::process::id()));
    for case in cases() {
        let (text, files) = case.job().unwrap();
        let printed = command().arg("takeoff").arg(case.path()).arg("--json").output().unwrap();
        assert!(printed.status.success());
        assert!(
            String::from_utf8(printed.stdout).unwrap() == api::takeoff_json(&text, &files),
            "{}",
            case.name
        );

        let folder = out.join(&case.name);
        let written = command().arg("takeoff").arg(case.path()).arg("--out").arg(&folder).output().unwrap();
        assert!(written.status.success());
        let takeoff = api::read_and_document(&text, &files).unwrap();
        let document = fs::read_to_string(folder.join("takeoff.json")).unwrap();
        assert!(document == takeoff_core::report::document(&takeoff), "{}", case.name);
        for (name, table) in takeoff_core::report::tables::all(&takeoff) {
            let file = fs::read_to_string(folder.join(format!("{name}.csv"))).unwrap();
            assert!(file == table.csv(), "{}: {name}", case.name);
        }
    }
    fs::remove_dir_all(out).unwrap();
}

/// What the fixtures have to show between them.
#[test]
fn the_fixtures_show_every_kind_of_work() {
    let takeoffs: Vec<String> = cases()
        .iter()
        .map(|case| {
            let (text, files) = case.job().unwrap();
            let answer = api::takeoff_json(&text, &files);
            without_space(&(text + &answer))
        })
        .collect();
    let missing: Vec<&str> = [
        // Tiles, and how they lie.
        "\"laps\": \"double\"",
        "\"lap_side\": \"right\"",
        "\"lap_side\": \"left\"",
        "\"pan_and_cover\"",
        "\"bond\": \"straight\"",
        "\"bond\": \"half\"",
        "\"1/3\"",
        "\"shape\": \"sine\"",
        "\"shape\": \"arcs\"",
        "\"held\": \"hung\"",
        "\"held\": \"nailed\"",
        "\"held\": \"clipped\"",
        "\"held\": \"mortar\"",
        "\"ridge_gap\"",
        "\"noses\"",
        "\"on_hand\"",
        "\"crew_record\"",
        "\"harvest\"",
        "\"least_cost\":{",
        "\"hole_saws\"",
        "\"axis\": \"plumb\"",
        "\"valley\"",
        "\"holes\"",
        "\"setbacks\"",
        "\"points\"",
        "\"bonded\"",
        "\"brittle\"",
        "\"recut\": false",
        // Situations and cuts.
        "\"one_tile_hole\"",
        "\"one_tile_edge\"",
        "\"two_side_by_side\"",
        "\"two_courses\"",
        "\"three\"",
        "\"four_or_more\"",
        "\"kind\": \"hole\"",
        "\"kind\": \"notch\"",
        "\"kind\": \"corner\"",
        "\"kind\": \"severed\"",
        "\"edge_tile\": true",
        "\"open_to\": [\"field_edge\"",
        "\"excluded\": true",
        "\"refasten\": true",
        // The deck, and what is odd.
        "\"method\": \"tucked\"",
        "\"method\": \"patched\"",
        "\"method\": \"three_course\"",
        "\"code\": \"no-lap-line-above\"",
        "\"round_at\": [\"",
        "\"edge\": \"hip\"",
        "\"edge\": \"ridge\"",
        "\"edge\": \"rake\"",
        "\"blocked\": true",
        "\"pieces\": 2",
        "\"lies_over\": [\"",
        "\"cut_round\": [\"",
        "\"code\": \"severed\"",
        "\"code\": \"inside-setback\"",
        "\"code\": \"bands-meet\"",
        "\"code\": \"deck-flashings-meet\"",
        "\"code\": \"exposure-beyond-greatest\"",
        "\"code\": \"head-lap-below-tuck\"",
    ]
    .into_iter()
    .filter(|what| !takeoffs.iter().any(|takeoff| takeoff.contains(&without_space(what))))
    .collect();
    assert!(missing.is_empty(), "no fixture has {missing:#?}");
}

fn without_space(text: &str) -> String {
    text.split_whitespace().collect()
}
