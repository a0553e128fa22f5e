//! Ctrl-C (`SIGINT`) and `SIGTERM`, held back while files are written.
use std::io;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use signal_hook::consts::{SIGINT, SIGTERM};
use signal_hook::{flag, low_level};

use crate::Failure;

/// Signals that arrive after [`Interrupt::held`] don't end the process: the writer asks for them between two files and
/// clears up.
pub(crate) struct Interrupt(Arc<AtomicUsize>);

impl Interrupt {
    /// Starts to hold signals back.
    pub(crate) fn held() -> io::Result<Interrupt> {
        let signal = Arc::new(AtomicUsize::new(0));
        for number in [SIGINT, SIGTERM] {
            flag::register_usize(number, Arc::clone(&signal), usize::try_from(number).unwrap_or_default())?;
        }
        Ok(Interrupt(signal))
    }

    /// # Errors
    ///
    /// A signal has arrived.
    pub(crate) fn check(&self) -> Result<(), Failure> {
        match self.0.load(Ordering::Relaxed) {
            0 => Ok(()),
            signal => Err(Failure::Interrupted(i32::try_from(signal).unwrap_or_default())),
        }
    }
}

/// Ends the process as the signal would have ended it, so that a shell sees an interrupted command.
pub(crate) fn end_by(signal: i32) {
    let _ = low_level::emulate_default_handler(signal);
}
