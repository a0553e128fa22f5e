//! The command, as a program.
use std::ffi::OsStr;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::sync::OnceLock;

/// The command, built as this test was built; Cargo builds no other package's programs for a test.
///
/// # Panics
///
/// When it can't be built.
#[allow(clippy::expect_used, reason = "without the command there is nothing to test")]
pub fn command() -> Command {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    Command::new(PROGRAM.get_or_init(|| build().expect("the command is built")))
}

fn build() -> Option<PathBuf> {
    let mut cargo = Command::new(option_env!("CARGO").unwrap_or("cargo"));
    cargo.args(["build", "--quiet", "--locked", "--package", "takeoff-core", "--bin", "tilepost"]);
    cargo.args(["--message-format", "json-render-diagnostics"]);
    if !cfg!(debug_assertions) {
        cargo.arg("--release");
    }
    let built = cargo.current_dir(crate::root()).stderr(Stdio::inherit()).output().ok()?;
    let messages = String::from_utf8(built.stdout).ok()?;
    let program = messages.lines().find_map(|line| {
        let message: serde_json::Value = serde_json::from_str(line).ok()?;
        Some(PathBuf::from(message["executable"].as_str()?))
    })?;
    (program.file_stem() == Some(OsStr::new("tilepost"))).then_some(program)
}
