//! What is no job, or can't be written, ends in a message and in nothing half done.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::fs::{self, File};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Output, Stdio};

use serde_json::Value;
use tilepost_tests::{Case, Folder, command};

/// Memory that a refusal may take, in KiB: far less than what is refused.
const MEMORY: u64 = 512 << 10;

/// Runs the command with memory for small things only.
fn tilepost(arguments: &[&Path]) -> Output {
    let program = command().get_program().to_owned();
    let limited = format!("ulimit -v {MEMORY}; exec \"$@\"");
    Command::new("sh").arg("-c").arg(limited).arg("sh").arg(program).args(arguments).output().unwrap()
}

fn takeoff(job: &Path) -> Output {
    tilepost(&["takeoff".as_ref(), job])
}

/// The command failed with `status`, printed nothing, and told something that has `words` in it.
#[track_caller]
fn refused(output: &Output, status: i32, words: &str) {
    let told = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(status), "{told}");
    assert!(output.stdout.is_empty());
    assert!(told.contains(words), "`{words}` is not in: {told}");
    assert!(!told.contains("panicked") && told.len() < 20_000, "{told}");
}

fn plain_gable() -> Case {
    Case::all().unwrap().into_iter().find(|case| case.name == "plain-gable").unwrap()
}

#[test]
fn a_gigabyte_is_not_read() {
    let folder = Folder::new("bad-gigabyte");
    let path = folder.0.join("job.json");
    File::create(&path).unwrap().set_len(1 << 30).unwrap();
    refused(&takeoff(&path), 2, "larger than 64 MiB");

    let (text, _) = plain_gable().job().unwrap();
    let mut job: Value = serde_json::from_str(&text).unwrap();
    job["slopes"][0]["posts"] = serde_json::json!({ "csv": "posts.csv" });
    let path = folder.file("job.json", job.to_string());
    File::create(folder.0.join("posts.csv")).unwrap().set_len(1 << 30).unwrap();
    refused(&takeoff(&path), 2, "larger than 64 MiB");
}

#[test]
fn a_file_without_end_is_not_read() {
    refused(&takeoff("/dev/zero".as_ref()), 2, "a pipe or a device");
}

#[test]
fn nesting_ten_thousand_deep() {
    let folder = Folder::new("bad-nesting");
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let text = open.repeat(10_000) + "1" + &close.repeat(10_000);
        refused(&takeoff(&folder.file("job.json", &text)), 1, "[too-deep]");
        refused(&takeoff(&folder.file("job.json", open.repeat(10_000))), 1, "[too-deep]");
    }
    let toml = format!("a = {}", "[".repeat(10_000));
    refused(&takeoff(&folder.file("job.toml", toml)), 1, "error[");
}

#[test]
fn a_mistake_is_shown_in_its_line() {
    let folder = Folder::new("bad-line");
    let (text, _) = plain_gable().job().unwrap();
    let text = text.replacen("\"5:12\"", "\"5 to 12\"", 1);
    let line = text.lines().position(|line| line.contains("5 to 12")).unwrap() + 1;
    let column = text.lines().nth(line - 1).unwrap().find("\"5 to").unwrap() + 1;
    refused(&takeoff(&folder.file("job.json", &text)), 1, &format!("job.json:{line}:{column}\n"));

    let toml = "format = 'tilepost-job/1'\nname = 7\n";
    refused(&takeoff(&folder.file("job.toml", toml)), 1, "job.toml:2:8\n");
}

#[test]
fn a_thousand_million_posts() {
    let folder = Folder::new("bad-posts");
    let (text, _) = plain_gable().job().unwrap();
    let job: Value = serde_json::from_str(&text).unwrap();

    let mut grids = job.clone();
    let grid = |columns: u64, rows: u64| {
        serde_json::json!({
            "name": format!("{columns} by {rows}"), "assembly": "post-7", "u": "1 ft", "v": "1 ft",
            "columns": columns, "column_spacing": "1 mm", "rows": rows, "row_spacing": "1 mm",
        })
    };
    for (columns, rows) in [(100_000, 10_000), (1_000_000, 1_000), (1_000_000, 1_000_000)] {
        grids["slopes"][0]["post_grids"] = serde_json::json!([grid(columns, rows)]);
        refused(&takeoff(&folder.file("job.json", grids.to_string())), 1, "[too-many]");
    }
    let many: Vec<Value> = (1..=1_000).map(|i| grid(1_000, 1_000 + i)).collect();
    grids["slopes"][0]["post_grids"] = many.into();
    refused(&takeoff(&folder.file("job.json", grids.to_string())), 1, "[too-many]");
    grids["slopes"][0]["post_grids"] = serde_json::json!([grid(u64::MAX, u64::MAX)]);
    refused(&takeoff(&folder.file("job.json", grids.to_string())), 1, "[out-of-range]");

    let mut table = job;
    table["slopes"][0]["posts"] = serde_json::json!({ "csv": "posts.csv" });
    let rows = "A,post-7,1 ft,1 ft\n".repeat(1_500_000);
    folder.file("posts.csv", "name,assembly,u,v\n".to_owned() + &rows);
    refused(&takeoff(&folder.file("job.json", table.to_string())), 1, "[too-many]");
}

#[test]
fn text_that_is_no_utf_8() {
    let folder = Folder::new("bad-utf8");
    refused(&takeoff(&folder.file("job.json", b"{\"name\": \"M\xfcller\"}")), 1, "[not-utf8]");
    refused(&takeoff(&folder.file("job.json", [0xff, 0xfe, b'{', 0, b'}', 0])), 1, "[not-utf8]");

    let (text, _) = plain_gable().job().unwrap();
    let mut job: Value = serde_json::from_str(&text).unwrap();
    job["slopes"][0]["posts"] = serde_json::json!({ "csv": "posts.csv" });
    folder.file("posts.csv", b"name,assembly,u,v\nS\xfcd,post-7,1 ft,1 ft\n");
    let output = takeoff(&folder.file("job.json", job.to_string()));
    refused(&output, 1, "[not-utf8]");
    refused(&output, 1, "posts.csv");
}

#[test]
fn what_is_not_there_or_is_no_file() {
    let folder = Folder::new("bad-missing");
    refused(&takeoff(&folder.0.join("job.json")), 2, "can't read");
    refused(&takeoff(&folder.0), 2, "can't read");
    refused(&takeoff(&folder.file("job.json", "")), 1, "[syntax]");
}

#[test]
fn a_folder_that_cannot_be_written_is_left_as_it_was() {
    let folder = Folder::new("bad-folder");
    let job = plain_gable().path();
    let out = |out: &Path| tilepost(&["takeoff".as_ref(), &job, "--out".as_ref(), out]);
    let told = |output: &Output| String::from_utf8_lossy(&output.stderr).into_owned();

    // A folder below a file can't be made, whoever asks.
    let file = folder.file("file", "mine");
    let output = out(&file.join("below"));
    assert_eq!(output.status.code(), Some(2), "{}", told(&output));
    assert!(told(&output).contains("can't write"), "{}", told(&output));
    assert_eq!(fs::read_to_string(&file).unwrap(), "mine");

    // A folder stands where one of the last files goes: the first ones must not appear either.
    let taken = folder.0.join("taken");
    fs::create_dir_all(taken.join("roof-1-south.svg")).unwrap();
    let output = out(&taken);
    assert_eq!(output.status.code(), Some(2), "{}", told(&output));
    assert!(told(&output).contains("can't write"), "{}", told(&output));
    let left: Vec<_> = fs::read_dir(&taken).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(left, ["roof-1-south.svg"]);
}

#[test]
fn a_job_with_problems_writes_nothing() {
    let folder = Folder::new("bad-problems");
    let out = folder.0.join("out");
    let job = folder.file("job.json", "{}");
    refused(&tilepost(&["takeoff".as_ref(), &job, "--out".as_ref(), &out]), 1, "[missing-field]");
    assert!(!out.exists());
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    let job = Case::all().unwrap().into_iter().find(|case| case.name == "commercial-400").unwrap().path();
    let mut child = command()
        .args(["takeoff".as_ref(), job.as_os_str(), "--json".as_ref()])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // More is printed than a pipe holds, and only a line of it is read.
    let mut line = String::new();
    BufReader::with_capacity(16, child.stdout.take().unwrap()).read_line(&mut line).unwrap();
    assert_eq!(line, "{\n");
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success());
    assert!(output.stderr.is_empty(), "{}", String::from_utf8_lossy(&output.stderr));
}

#[test]
fn output_that_cannot_be_printed_is_a_failure() {
    let full = File::options().write(true).open("/dev/full").unwrap();
    let output = command().arg("takeoff").arg(plain_gable().path()).stdout(full).output().unwrap();
    refused(&output, 2, "can't write to standard output");
}
