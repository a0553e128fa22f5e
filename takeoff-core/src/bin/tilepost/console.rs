//! Standard output and standard error: the only door to both.
use std::fmt::Display;
use std::io::{self, ErrorKind, Write};

use crate::Failure;

/// Writes data to standard output. A reader that has gone away (`| head`) is no failure.
///
/// # Errors
///
/// Standard output can't be written, such as on a full disk.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    let mut stdout = io::stdout().lock();
    // Standard output holds an unfinished line back, and an error at exit would be lost.
    match stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Failure::File(format!("can't write to standard output: {error}")))
        }
        _ => Ok(()),
    }
}

/// Writes a message to standard error. Where that is closed or full, the exit status alone reports the outcome.
pub(crate) fn report(message: impl Display) {
    // One write, so that messages of several runs don't interleave.
    let _ = io::stderr().lock().write_all(message.to_string().as_bytes());
}
