//! The layout, from the command: the laid job that it writes, and what it refuses to write.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::fs;
use std::path::Path;
use std::process::Output;

use serde_json::Value;
use takeoff_core::report::document;
use takeoff_core::{Files, Job, Takeoff, api, layout, report, takeoff};
use tilepost_tests::{Case, Folder, command};

fn case() -> Case {
    Case::all().unwrap().into_iter().find(|case| case.name == "least-cost-arrays").unwrap()
}

/// A folder with the fixture's job and the files that it names.
fn copied(name: &str) -> Folder {
    let folder = Folder::new(name);
    let (text, files) = case().job().unwrap();
    folder.file("job.json", text);
    files.iter().for_each(|(name, text)| drop(folder.file(name, text)));
    folder
}

fn run(arguments: &[&Path]) -> Output {
    command().arg("layout").args(arguments).output().unwrap()
}

/// The command failed with `status` and told something that has `words` in it; the folder is as it was.
#[track_caller]
fn refused(folder: &Folder, arguments: &[&Path], status: i32, words: &str) {
    let before: Vec<(String, Vec<u8>)> = contents(folder);
    let output = run(arguments);
    let told = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(status), "{told}");
    assert!(told.contains(words) && output.stdout.is_empty(), "`{words}` is not in: {told}");
    assert!(contents(folder) == before, "{:?}", folder.names());
}

fn contents(folder: &Folder) -> Vec<(String, Vec<u8>)> {
    folder.names().into_iter().map(|name| (name.clone(), fs::read(folder.0.join(&name)).unwrap())).collect()
}

/// A takeoff without the places of its findings in the job file.
fn told(mut takeoff: Takeoff) -> String {
    takeoff.findings.iter_mut().for_each(|finding| finding.path.clear());
    report::document(&document::Takeoff::from(&takeoff))
}

#[test]
fn the_laid_job_is_taken_off_as_it_was_laid() {
    let folder = copied("layout");
    let (job, out, report) =
        (folder.0.join("job.json"), folder.0.join("laid/job.json"), folder.0.join("laid"));
    let output = run(&[&job, "--out".as_ref(), &out, "--report".as_ref(), &report]);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));

    let (text, files) = case().job().unwrap();
    let read = Job::read(&text, &files).unwrap();
    let laid = layout(&read).unwrap();
    assert_eq!(String::from_utf8(output.stdout).unwrap(), report::layout(&laid.layout));
    for (name, bytes) in report::layout_files(&laid.layout) {
        assert!(fs::read(report.join(&name)).unwrap() == bytes, "{name}");
    }
    // The files that the laid job still names are beside it.
    let beside: Files = Job::files_named(&fs::read_to_string(&out).unwrap())
        .into_iter()
        .map(|name| (name.clone(), fs::read_to_string(report.join(name)).unwrap()))
        .collect();
    assert_eq!(beside, files);
    let again = Job::read(&fs::read_to_string(&out).unwrap(), &beside).unwrap();
    assert!(told(takeoff(&again).unwrap()) == told(takeoff(&laid.job).unwrap()));

    let taken = command().arg("takeoff").arg(&out).arg("--json").output().unwrap();
    assert!(taken.status.success());
    let taken: Value = serde_json::from_slice(&taken.stdout).unwrap();
    assert_eq!(taken["takeoff"]["counts"]["posts"], laid.layout.after.posts);

    // Beside the job nothing is to be copied, and once more is the same.
    let here = folder.0.join("job2.json");
    let output = run(&[&job, "--out".as_ref(), &here]);
    assert!(output.status.success());
    assert_eq!(String::from_utf8(output.stderr).unwrap(), format!("wrote {}\n", here.display()));
    assert!(fs::read(&here).unwrap() == fs::read(&out).unwrap());
    assert!(run(&[&job, "--out".as_ref(), &out]).status.success());
}

#[test]
fn the_command_prints_what_other_languages_get() {
    let (text, files) = case().job().unwrap();
    let output = run(&[&case().path(), "--json".as_ref()]);
    assert!(String::from_utf8(output.stdout).unwrap() == api::layout_json(&text, &files));
}

/// The same job written in TOML, where lists and tables within a line are as in JSON, but for `=`.
#[test]
fn a_job_in_toml_gives_a_laid_job_in_json() {
    fn toml(value: &Value) -> String {
        let fields = |fields: &serde_json::Map<String, Value>| {
            fields.iter().map(|(name, value)| format!("\"{name}\" = {}", toml(value))).collect::<Vec<_>>()
        };
        match value {
            Value::Object(object) => format!("{{ {} }}", fields(object).join(", ")),
            Value::Array(items) => format!("[{}]", items.iter().map(toml).collect::<Vec<_>>().join(", ")),
            value => value.to_string(),
        }
    }
    let folder = copied("layout-toml");
    let (text, files) = case().job().unwrap();
    let Ok(Value::Object(document)) = serde_json::from_str(&text) else { unreachable!() };
    let lines = document.iter().map(|(name, value)| format!("\"{name}\" = {}\n", toml(value)));
    let job = folder.file("job.toml", lines.collect::<String>());
    let out = folder.0.join("laid.json");
    let output = run(&[&job, "--out".as_ref(), &out]);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let laid: Value = serde_json::from_str(&fs::read_to_string(&out).unwrap()).unwrap();
    let expected: Value = serde_json::from_str(&api::layout_json(&text, &files)).unwrap();
    assert_eq!(laid, expected["job"]);
}

#[test]
fn nothing_that_the_job_is_read_from_is_written_over() {
    let folder = copied("layout-over");
    // Without arrays there is nothing to look for.
    let mut document: Value = serde_json::from_str(&case().job().unwrap().0).unwrap();
    document["slopes"][0].as_object_mut().unwrap().remove("arrays");
    folder.file("job.json", document.to_string());
    let at = |name: &str| folder.0.join(name);
    let (job, out, report) = (at("job.json"), Path::new("--out"), Path::new("--report"));
    refused(&folder, &[&job, out, &job], 2, "the job is read from it");
    refused(
        &folder,
        &[&job, out, &at("../").join(folder.0.file_name().unwrap()).join("job.json")],
        2,
        "the job is read from it",
    );
    refused(&folder, &[&job, out, &at("prices.csv")], 2, "the job is read from it");
    refused(&folder, &[&job, out, &at("laid.TOML")], 2, "let its name end in .json");
    refused(&folder, &[&job, out, &folder.0], 2, "a folder is there");
    refused(&folder, &[&job, out, &at("layout.json"), report, &folder.0], 2, "the job is read from it");
    let laid = [&job, out, &at("laid/layout.json"), report, &at("laid")];
    refused(&folder, &laid, 2, "two files would go to `layout.json`");
    folder.file("other/prices.csv", "item,unit,pack,price,currency\n");
    refused(&folder, &[&job, out, &at("other/job.json")], 2, "is not the one the job names");
    let own = folder.file("layout.json", fs::read(&job).unwrap());
    refused(&folder, &[&own, report, &folder.0], 2, "the job is read from it");
}

#[test]
fn a_job_without_a_layout_writes_nothing() {
    let folder = copied("layout-none");
    let mut document: Value = serde_json::from_str(&case().job().unwrap().0).unwrap();
    for field in ["prices", "bid"] {
        document.as_object_mut().unwrap().remove(field);
    }
    let job = folder.file("job.json", document.to_string());
    let out = folder.0.join("out");
    let arguments: [&Path; 5] = [&job, "--out".as_ref(), &out.join("job.json"), "--report".as_ref(), &out];
    refused(&folder, &arguments, 1, "[no-costs]");
    let output = run(&[&job, "--json".as_ref()]);
    assert_eq!(output.status.code(), Some(1));
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["problems"][0]["code"], "no-costs");
}
