//! Files that the command writes: none of the user's is lost, and a set is there whole or not at all.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::fs::{self, File};
use std::os::unix::fs::symlink;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use serde_json::Value;
use tilepost_tests::{Case, Folder, command};

fn case(name: &str) -> Case {
    Case::all().unwrap().into_iter().find(|case| case.name == name).unwrap()
}

/// A folder with a fixture's job and the files that it names.
fn copied(fixture: &str, name: &str) -> Folder {
    let folder = Folder::new(name);
    let (text, files) = case(fixture).job().unwrap();
    folder.file("job.json", text);
    files.iter().for_each(|(name, text)| drop(folder.file(name, text)));
    folder
}

/// The job with another name, so that its files differ.
fn renamed(job: &Path, name: &str) -> PathBuf {
    let mut document: Value = serde_json::from_str(&fs::read_to_string(job).unwrap()).unwrap();
    document["name"] = name.into();
    let path = job.with_file_name(format!("{name}.json"));
    fs::write(&path, document.to_string()).unwrap();
    path
}

fn takeoff(job: &Path, out: &Path) -> Command {
    let mut command = command();
    command.arg("takeoff").arg(job).arg("--out").arg(out);
    command
}

fn message(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

#[track_caller]
fn succeeds(command: &mut Command) -> Output {
    let output = command.output().unwrap();
    assert!(output.status.success(), "{}", message(&output));
    output
}

/// The command refuses with status 2 and `words` before it prints anything, and `folder` stays as it was.
#[track_caller]
fn is_refused(command: &mut Command, folder: &Folder, words: &str) {
    let before = contents(&folder.0);
    let output = command.output().unwrap();
    let message = message(&output);
    assert_eq!(output.status.code(), Some(2), "{message}");
    assert!(message.contains(words), "`{words}` is not in: {message}");
    assert!(output.stdout.is_empty());
    assert!(contents(&folder.0) == before, "{message}");
}

/// Every entry of a folder and below: file content, or the target of a link.
fn contents(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let metadata = fs::symlink_metadata(&path).unwrap();
        if metadata.is_symlink() {
            let target = fs::read_link(&path).unwrap();
            found.push((path, target.into_os_string().into_encoded_bytes()));
        } else if metadata.is_dir() {
            found.extend(contents(&path));
            found.push((path, Vec::new()));
        } else if metadata.is_file() {
            found.push((path.clone(), fs::read(&path).unwrap()));
        } else {
            found.push((path, Vec::new()));
        }
    }
    found.sort();
    found
}

/// The contents of a folder by name in it.
fn set(folder: &Path) -> FileSet {
    let relative = |path: &Path| path.strip_prefix(folder).unwrap().to_owned();
    contents(folder).iter().map(|(path, bytes)| (relative(path), bytes.clone())).collect()
}

fn hidden(folder: &Path) -> Vec<String> {
    let names = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name());
    names.filter_map(|name| name.into_string().ok()).filter(|name| name.starts_with('.')).collect()
}

#[test]
fn the_folder_of_the_job_is_never_written_to() {
    let folder = copied("plain-gable", "own-files");
    for name in ["posts.csv", "bid.csv", "takeoff.json", "order.json"] {
        folder.file(name, "mine");
    }
    let job = folder.0.join("job.json");
    for verb in ["takeoff", "order"] {
        is_refused(command().arg(verb).arg(&job).arg("--out").arg(&folder.0), &folder, "is read from it");
        let mut here = command();
        here.current_dir(&folder.0).args([verb, "job.json", "--out", "."]);
        is_refused(&mut here, &folder, "the job is read from it");
    }
    let mut layout = command();
    layout.arg("layout").arg(case("least-cost-arrays").path()).arg("--report").arg(&folder.0);
    is_refused(&mut layout, &folder, "was not written there by an earlier run");
}

#[test]
fn the_current_folder_is_not_replaced() {
    let folder = Folder::new("current");
    let mut here = takeoff(&case("plain-gable").path(), Path::new("."));
    is_refused(here.current_dir(&folder.0), &folder, "the command runs in it");
}

#[test]
fn a_second_run_replaces_the_set_of_the_first() {
    let folder = copied("plain-gable", "twice");
    let (job, out) = (folder.0.join("job.json"), folder.0.join("out"));
    succeeds(&mut takeoff(&job, &out));
    let first = set(&out);
    succeeds(&mut takeoff(&job, &out));
    assert!(set(&out) == first);
    assert!(hidden(&folder.0).is_empty(), "{:?}", hidden(&folder.0));

    // A slope less is a map less, and the map of the first run is gone.
    let mut document: Value = serde_json::from_str(&fs::read_to_string(&job).unwrap()).unwrap();
    document["slopes"][0]["name"] = "renamed".into();
    let other = folder.file("other.json", document.to_string());
    succeeds(&mut takeoff(&other, &out));
    assert!(out.join("roof-1-renamed.svg").exists() && !out.join("roof-1-south.svg").exists());
    assert!(hidden(&folder.0).is_empty());
}

/// The digests are checked by another program: `sha256sum` of the GNU core utilities.
#[test]
fn the_record_lists_every_file() {
    let folder = Folder::new("record");
    let out = folder.0.join("out");
    succeeds(&mut takeoff(&case("plain-gable").path(), &out));
    let record = "tilepost-takeoff.sha256";
    let checked = succeeds(Command::new("sha256sum").args(["--check", "--strict", record]).current_dir(&out));
    let lines = String::from_utf8(checked.stdout).unwrap();
    assert_eq!(lines.lines().filter(|line| line.ends_with(": OK")).count(), set(&out).len() - 1, "{lines}");
}

#[test]
fn a_file_that_the_user_added_or_changed_is_kept() {
    let folder = Folder::new("added");
    let (job, out) = (case("plain-gable").path(), folder.0.join("out"));
    succeeds(&mut takeoff(&job, &out));
    let workbook = fs::read(out.join("bid.xlsx")).unwrap();

    folder.file("out/notes.txt", "mine");
    is_refused(&mut takeoff(&job, &out), &folder, "`notes.txt` was not written there by an earlier run");
    fs::remove_file(out.join("notes.txt")).unwrap();
    fs::create_dir(out.join("photos")).unwrap();
    is_refused(&mut takeoff(&job, &out), &folder, "`photos/` was not written");
    fs::remove_dir(out.join("photos")).unwrap();
    folder.file("out/bid.xlsx", "mine");
    is_refused(&mut takeoff(&job, &out), &folder, "`bid.xlsx` was changed after an earlier run wrote it");
    folder.file("out/bid.xlsx", workbook);
    // What another verb wrote is not stale.
    is_refused(command().arg("order").arg(&job).arg("--out").arg(&out), &folder, "was not written");

    // A file that is gone, and one that a file browser left, keep nobody from a new set.
    fs::remove_file(out.join("posts.csv")).unwrap();
    folder.file("out/.DS_Store", "");
    succeeds(&mut takeoff(&job, &out));
    assert!(out.join("posts.csv").exists() && !out.join(".DS_Store").exists());
}

#[test]
fn a_job_in_the_folder_of_an_earlier_run_is_kept() {
    let folder = Folder::new("chained");
    let laid = folder.0.join("laid");
    let layout = |job: &Path, out: &str| {
        let mut command = command();
        command.arg("layout").arg(job).arg("--out").arg(laid.join(out)).arg("--report").arg(&laid);
        command
    };
    succeeds(&mut layout(&case("least-cost-arrays").path(), "job.json"));
    succeeds(&mut layout(&case("least-cost-arrays").path(), "job.json"));
    is_refused(&mut layout(&laid.join("job.json"), "again.json"), &folder, "the job is read from it");
    is_refused(&mut takeoff(&laid.join("job.json"), &laid), &folder, "the job is read from it");
}

#[test]
fn links_are_not_followed() {
    let folder = Folder::new("links");
    let (job, out) = (case("plain-gable").path(), folder.0.join("out"));
    let victim = folder.file("victim", "mine");
    fs::create_dir(&out).unwrap();
    symlink(&victim, out.join("posts.csv")).unwrap();
    is_refused(&mut takeoff(&job, &out), &folder, "`posts.csv` was not written");
    fs::remove_file(out.join("posts.csv")).unwrap();

    // In place of a file of an earlier set, of the staging folder, and of the folder itself.
    succeeds(&mut takeoff(&job, &out));
    fs::rename(out.join("posts.csv"), folder.0.join("posts.csv")).unwrap();
    symlink(folder.0.join("posts.csv"), out.join("posts.csv")).unwrap();
    is_refused(&mut takeoff(&job, &out), &folder, "`posts.csv` was changed");
    fs::remove_dir_all(&out).unwrap();

    let elsewhere = folder.0.join("elsewhere");
    fs::create_dir(&elsewhere).unwrap();
    symlink(&elsewhere, folder.0.join(".tilepost-new")).unwrap();
    let before = contents(&folder.0);
    let output = takeoff(&job, &out).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(message(&output).contains(".tilepost-new") && contents(&folder.0) == before);
    fs::remove_file(folder.0.join(".tilepost-new")).unwrap();

    symlink(folder.0.join("nowhere"), &out).unwrap();
    is_refused(&mut takeoff(&job, &out), &folder, "a link that leads nowhere");

    // A laid job.
    let link = folder.0.join("laid.json");
    symlink(&victim, &link).unwrap();
    let mut layout = command();
    layout.arg("layout").arg(case("least-cost-arrays").path()).arg("--out").arg(&link);
    is_refused(&mut layout, &folder, "a link, pipe or device is there");
}

#[test]
fn a_laid_job_replaces_only_a_laid_job() {
    let folder = copied("least-cost-arrays", "laid-job");
    let (job, laid) = (folder.0.join("job.json"), folder.0.join("laid.json"));
    let layout = |job: &Path, out: &Path| {
        let mut command = command();
        command.arg("layout").arg(job).arg("--out").arg(out);
        command
    };
    let mine = folder.file("mine.json", "{}");
    let refused = |out: &Path, words: &str| {
        let before = contents(&folder.0);
        let output = layout(&job, out).output().unwrap();
        assert_eq!(output.status.code(), Some(2), "{}", message(&output));
        assert!(message(&output).contains(words), "{}", message(&output));
        assert!(contents(&folder.0) == before);
    };
    refused(&mine, "a file is there that no earlier run wrote");
    succeeds(&mut layout(&job, &laid));
    succeeds(&mut layout(&job, &laid));
    // Another result goes to the same file.
    let first = fs::read(&laid).unwrap();
    let other = renamed(&job, "other");
    succeeds(&mut layout(&other, &laid));
    assert!(fs::read(&laid).unwrap() != first);
    let checked =
        succeeds(Command::new("sha256sum").args(["--check", "laid.json.sha256"]).current_dir(&folder.0));
    assert_eq!(String::from_utf8(checked.stdout).unwrap(), "laid.json: OK\n");

    fs::write(&laid, "{\"mine\": 1}").unwrap();
    refused(&laid, "it was changed after an earlier run wrote it");
    refused(&folder.0.join(format!("{}.json", "n".repeat(250))), "more than 248 bytes");
    assert!(hidden(&folder.0).is_empty());
}

#[test]
fn names_that_differ_by_case_alone_are_told_apart() {
    let folder = Folder::new("case");
    let laid = folder.0.join("laid");
    let mut layout = command();
    layout.arg("layout").arg(case("least-cost-arrays").path());
    layout.arg("--out").arg(laid.join("Layout.JSON")).arg("--report").arg(&laid);
    is_refused(&mut layout, &folder, "two files would go to `Layout.JSON`");
}

#[test]
fn a_long_name_of_a_slope_is_cut_by_its_bytes() {
    let folder = copied("plain-gable", "long-name");
    let mut document: Value =
        serde_json::from_str(&fs::read_to_string(folder.0.join("job.json")).unwrap()).unwrap();
    // U+20000 takes four bytes in UTF-8.
    document["slopes"][0]["name"] = "\u{20000}".repeat(60).into();
    let job = folder.file("job.json", document.to_string());
    succeeds(&mut takeoff(&job, &folder.0.join("out")));
    // The shortest limit in use: 143 bytes, where a file system encrypts names (Linux kernel documentation, eCryptfs).
    let longest = folder.names().iter().map(|name| name.trim_start_matches("out/").len()).max();
    assert!(longest <= Some(143), "{longest:?}");
}

#[test]
fn a_read_only_folder_stays_as_it_is() {
    let folder = Folder::new("read-only");
    let (job, out) = (case("plain-gable").path(), folder.0.join("out"));
    succeeds(&mut takeoff(&job, &out));
    let mut permissions = fs::metadata(&out).unwrap().permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&out, permissions).unwrap();
    is_refused(&mut takeoff(&job, &out), &folder, "it is read-only");
}

/// Runs the command with the largest file it may write, in blocks of 512 bytes (POSIX.1-2017, `ulimit -f`).
fn limited(blocks: u32, ignore: &str, command: &Command) -> Output {
    let script = format!("{ignore} ulimit -f {blocks}; exec \"$@\"");
    let mut shell = Command::new("sh");
    shell.arg("-c").arg(script).arg("sh").arg(command.get_program()).args(command.get_args());
    shell.output().unwrap()
}

#[test]
fn a_disk_that_fills_up_leaves_the_old_set() {
    let folder = copied("plain-gable", "full");
    let (job, out) = (folder.0.join("job.json"), folder.0.join("out"));
    succeeds(&mut takeoff(&job, &out));
    let (before, other) = (set(&out), renamed(&job, "other"));
    // With SIGXFSZ ignored, a write beyond the limit fails with an error; else the signal kills.
    let output = limited(8, "trap '' XFSZ;", &takeoff(&other, &out));
    assert_eq!(output.status.code(), Some(2), "{}", message(&output));
    assert!(message(&output).contains("can't write"), "{}", message(&output));
    assert!(set(&out) == before && hidden(&folder.0).is_empty());
    let output = limited(8, "", &takeoff(&other, &out));
    assert_ne!(output.status.code(), Some(0));
    assert!(set(&out) == before);
    succeeds(&mut takeoff(&other, &out));
    assert!(set(&out) != before && hidden(&folder.0).is_empty());
}

/// A file system of 64 KiB in memory; as another user than root, in a name space of its own.
#[test]
fn a_full_file_system_leaves_nothing() {
    let folder = copied("plain-gable", "tmpfs");
    let (job, mount) = (folder.0.join("job.json"), folder.0.join("mount"));
    fs::create_dir(&mount).unwrap();
    let script = "mount -t tmpfs -o size=64k tmpfs \"$1\" || exit 99; mount=\"$1\"; shift; \
                  \"$@\"; status=$?; ls -A \"$mount\"; exit $status";
    let run = takeoff(&job, &mount.join("out"));
    let mut shell = Command::new("unshare");
    shell.args(["--mount", "--map-root-user", "sh", "-c", script, "sh"]).arg(&mount);
    let output = shell.arg(run.get_program()).args(run.get_args()).output().unwrap();
    if output.status.code() == Some(99) || message(&output).starts_with("unshare") {
        // No mount is allowed here: the limit on a file stands for it.
        return a_disk_that_fills_up_leaves_the_old_set();
    }
    assert_eq!(output.status.code(), Some(2), "{}", message(&output));
    assert!(message(&output).contains("No space left"), "{}", message(&output));
    // The summary ends the output: `ls` found nothing.
    let summary = succeeds(command().arg("takeoff").arg(&job)).stdout;
    assert!(output.stdout == summary, "{}", String::from_utf8_lossy(&output.stdout));
}

#[test]
fn closed_and_full_streams_cause_no_panic() {
    let folder = copied("plain-gable", "streams");
    let job = folder.0.join("job.json");
    let bad = folder.file("bad.json", "{}");
    let out = folder.0.join("out");
    let full = || Stdio::from(File::options().write(true).open("/dev/full").unwrap());
    // A pipe whose reader is gone.
    let closed = || {
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        Stdio::from(writer)
    };
    for stderr in [full(), closed()] {
        let output = takeoff(&job, &out).stderr(stderr).output().unwrap();
        assert_eq!(output.status.code(), Some(0));
        assert!(out.join("takeoff.json").exists());
        fs::remove_dir_all(&out).unwrap();
    }
    for (arguments, status) in [
        (vec!["takeoff", bad.to_str().unwrap()], 1),
        (vec!["order", bad.to_str().unwrap()], 1),
        (vec!["check", bad.to_str().unwrap()], 1),
        (vec!["takeoff", "missing.json"], 2),
        (vec!["takeoff"], 2),
    ] {
        for stderr in [full(), closed()] {
            let output = command().args(&arguments).stderr(stderr).output().unwrap();
            assert_eq!(output.status.code(), Some(status), "{arguments:?}");
        }
    }
    // Standard output: nothing is written where it is full; a reader that is gone changes nothing.
    let output = takeoff(&job, &out).stdout(full()).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(message(&output).contains("can't write to standard output") && !out.exists());
    let output = takeoff(&job, &out).stdout(closed()).output().unwrap();
    assert_eq!((output.status.code(), out.exists()), (Some(0), true), "{}", message(&output));
    for arguments in [["schema", "--help"].as_slice(), &["--version"], &["schema"], &["check", "--help"]] {
        let output = command().args(arguments).stdout(closed()).stderr(Stdio::piped()).output().unwrap();
        assert_eq!(message(&output), "");
    }
    let output = command().args(["check", bad.to_str().unwrap(), "--json"]).stdout(full()).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
}

/// Ends within `seconds`.
#[track_caller]
fn ends(mut child: Child, seconds: u64) -> Output {
    let start = Instant::now();
    while child.try_wait().unwrap().is_none() {
        if start.elapsed() > Duration::from_secs(seconds) {
            child.kill().unwrap();
            unreachable!("the command hangs");
        }
        thread::sleep(Duration::from_millis(5));
    }
    child.wait_with_output().unwrap()
}

#[test]
fn a_pipe_or_device_is_not_read() {
    let folder = copied("plain-gable", "pipe");
    let pipe = folder.0.join("pipe.csv");
    succeeds(Command::new("mkfifo").arg(&pipe));
    let mut document: Value =
        serde_json::from_str(&fs::read_to_string(folder.0.join("job.json")).unwrap()).unwrap();
    document["slopes"][0]["posts"] = serde_json::json!({ "csv": "pipe.csv" });
    let names = folder.file("names.json", document.to_string());
    let job = folder.0.join("job.json");
    for (arguments, file) in [
        (vec![pipe.as_path()], "pipe.csv"),
        (vec![&names], "pipe.csv"),
        (vec![Path::new("/dev/zero")], "/dev/zero"),
    ] {
        for verb in ["takeoff", "check", "layout", "order"] {
            let mut command = command();
            command.arg(verb).args(&arguments).stderr(Stdio::piped()).stdout(Stdio::null());
            let output = ends(command.spawn().unwrap(), 20);
            assert_eq!(output.status.code(), Some(2), "{}", message(&output));
            assert!(message(&output).contains(file), "{}", message(&output));
            assert!(message(&output).contains("save its data to a file"), "{}", message(&output));
        }
    }
    let mut compare = command();
    compare.arg("compare").args([&job, &pipe]).stderr(Stdio::piped()).stdout(Stdio::null());
    assert_eq!(ends(compare.spawn().unwrap(), 20).status.code(), Some(2));
}

#[test]
fn a_wrong_byte_has_one_message() {
    let folder = copied("plain-gable", "utf8");
    let mut document: Value =
        serde_json::from_str(&fs::read_to_string(folder.0.join("job.json")).unwrap()).unwrap();
    document["slopes"][0]["posts"] = serde_json::json!({ "csv": "posts.csv" });
    let job = folder.file("names.json", document.to_string());
    let posts = folder.file("posts.csv", b"\xfcname,assembly,u,v\n");
    let words = "is not UTF-8 text: byte 1 fits no character";
    for output in [
        command().arg("check").arg(folder.file("bad.json", b"\xff")).output().unwrap(),
        command().arg("check").arg(&job).output().unwrap(),
        command().arg("compare").arg(folder.0.join("job.json")).arg(&posts).output().unwrap(),
    ] {
        assert_eq!(output.status.code(), Some(1));
        let text = String::from_utf8(output.stdout).unwrap() + &String::from_utf8(output.stderr).unwrap();
        assert!(text.contains(words), "{text}");
    }
}

/// Waits until a run writes, or has ended.
fn wait_for_writing(child: &mut Child, folder: &Path) {
    while !folder.join(".tilepost-new").exists() && child.try_wait().unwrap().is_none() {
        thread::yield_now();
    }
}

/// Kills at spread times from the first file on: the folder has the set of one job or of the other.
/// Files of a folder by name, with their bytes.
type FileSet = Vec<(PathBuf, Vec<u8>)>;

/// Two jobs of different names beside each other, and the set of files that each writes.
fn two_jobs(folder: &Path) -> ([PathBuf; 2], [FileSet; 2]) {
    let jobs = ["one", "two"].map(|name| renamed(&folder.join("job.json"), name));
    let sets = jobs.each_ref().map(|job| {
        let own = folder.join("own");
        succeeds(&mut takeoff(job, &own));
        let set = set(&own);
        fs::remove_dir_all(&own).unwrap();
        set
    });
    (jobs, sets)
}

#[test]
fn a_killed_run_leaves_one_set_whole() {
    let folder = copied("plain-gable", "killed");
    let (jobs, sets) = two_jobs(&folder.0);
    let top = folder.0.join("top");
    let out = top.join("out");
    fs::create_dir(&top).unwrap();
    succeeds(takeoff(&jobs[0], &out).stdout(Stdio::null()));
    let spawn = |job: &Path| takeoff(job, &out).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
    // The time that a run takes to write.
    let mut child = spawn(&jobs[0]);
    wait_for_writing(&mut child, &top);
    let start = Instant::now();
    child.wait().unwrap();
    let writing = start.elapsed();

    let mut killed = 0;
    for round in 0..40_u32 {
        let mut child = spawn(&jobs[1 - (round % 2) as usize]);
        wait_for_writing(&mut child, &top);
        thread::sleep(writing * round / 36);
        child.kill().unwrap();
        killed += u32::from(!child.wait().unwrap().success());
        let now = set(&out);
        assert!(
            sets.contains(&now),
            "after {round} rounds: {:?}",
            now.iter().map(|(name, _)| name).collect::<Vec<_>>()
        );
    }
    assert!(killed >= 10, "only {killed} runs were killed before they ended");
    // The next run clears up.
    succeeds(&mut takeoff(&jobs[0], &out));
    assert!(set(&out) == sets[0] && hidden(&top).is_empty(), "{:?}", hidden(&top));
}

#[test]
fn ctrl_c_leaves_no_unfinished_files() {
    let folder = copied("plain-gable", "interrupted");
    let (job, top) = (folder.0.join("job.json"), folder.0.join("top"));
    fs::create_dir(&top).unwrap();
    let out = top.join("out");
    let mut interrupted = 0;
    for round in 0..10_u32 {
        let mut command = takeoff(&job, &out);
        let mut child = command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        wait_for_writing(&mut child, &top);
        thread::sleep(Duration::from_micros(200) * round);
        let pid = child.id().to_string();
        // A run that has ended already has no process to signal.
        let _ = Command::new("sh").args(["-c", &format!("kill -INT {pid} 2> /dev/null")]).status().unwrap();
        let status = child.wait().unwrap();
        let signal = std::os::unix::process::ExitStatusExt::signal(&status);
        assert!(status.success() || signal == Some(2), "{status}");
        interrupted += u32::from(!status.success());
        assert!(hidden(&top).is_empty(), "{:?}", hidden(&top));
    }
    assert!(interrupted > 0, "no run was interrupted");
}

#[test]
fn runs_at_once_do_not_mix() {
    let folder = copied("plain-gable", "at-once");
    let (jobs, sets) = two_jobs(&folder.0);
    let top = folder.0.join("top");
    fs::create_dir(&top).unwrap();
    let out = top.join("out");
    for _ in 0..5 {
        let runs: Vec<Child> = (0..4)
            .map(|run| {
                takeoff(&jobs[run % 2], &out).stdout(Stdio::null()).stderr(Stdio::piped()).spawn().unwrap()
            })
            .collect();
        for run in runs {
            let output = run.wait_with_output().unwrap();
            assert!(output.status.success(), "{}", message(&output));
        }
        assert!(sets.contains(&set(&out)) && hidden(&top).is_empty());
    }
}
