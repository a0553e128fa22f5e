//! The screening against published values, its rules on small roofs, and what must hold for all.
mod jobs;
mod properties;
mod published;

use super::*;
use crate::model::{Lags, usual_thread, usual_tip};
use crate::testing::{inches, len};
use crate::units::Length;

/// Two lags of this diameter and length, thread and tip as published, 3 in apart.
fn lags(diameter: &str, length: &str) -> Lags {
    let (diameter, length) = (len(diameter), len(length));
    Lags {
        count: 2,
        diameter,
        length,
        thread_length: usual_thread(length),
        tip: usual_tip(diameter).unwrap(),
        shim: Length::ZERO,
        across: Length::ZERO,
        spacing: Some(len("3 in")),
    }
}

/// What one lag holds with this much thread, in pounds.
fn holds(specific_gravity: f64, diameter: &str, thread: Length, factor: f64) -> f64 {
    withdrawal_lbf_per_in(specific_gravity, len(diameter)) * factor * thread.nm() as f64
        / Length::INCH.nm() as f64
}
