//! Quantities as people write them and as the program keeps them.
//!
//! | quantity | kept as | written |
//! |---|---|---|
//! | [`Length`] | whole nanometres, `i64` | `6 5/8 in`, `3'-4 1/2"`, `168 mm`, `0.17 m` |
//! | [`RealLength`] | mm, `f64` | (computed, never written) |
//! | [`Pitch`] | rise and run, `f64` | `5:12`, `22.6 deg`, `41.7 %` |
//! | [`Azimuth`] | degrees clockwise from north, `f64` | `135 deg`, `135°` |
//! | [`Area`] | mm², `f64` | (computed, never written) |
//! | [`Volume`] | mm³, `f64` | `10.1 fl oz`, `300 mL`, `1 gal`, `36 in3` |
//! | [`Weight`] | grams, `f64` | `9.6 lb`, `4.3 kg` |
//! | [`Pressure`] | pascals, `f64` | `24.5 psf`, `1.2 kPa` |
//! | [`Speed`] | metres a second, `f64` | `115 mph`, `51 m/s` |
//! | [`Force`] | newtons, `f64` | (computed, never written) |
//!
//! # Why whole nanometres?
//!
//! Whether an opening meets a tile is a question of touching or not, and a quarter of an inch decides
//! what a crew brings. In whole nanometres 1/64 in (396 875 nm), 1/10 000 in (2 540 nm) and 0.01 mm are
//! all exact, so such questions are settled in integers, without a tolerance. The inch is 25.4 mm exactly
//! (international yard and pound agreement, 1959).
//!
//! # Why is a bare number refused?
//!
//! Nobody can tell whether `40` was measured in inches or in millimetres. Only zero needs no unit.
mod area;
mod azimuth;
mod cursor;
mod error;
mod force;
mod length;
mod measure;
mod money;
mod number;
mod parse;
mod pitch;
mod pressure;
mod quantity;
mod real_length;
mod show;
mod speed;
#[cfg(test)]
mod tests;
mod unit;
mod volume;
mod weight;

pub use area::Area;
pub use azimuth::Azimuth;
pub use error::{CODES, UnitError};
pub use force::Force;
pub use length::Length;
pub use measure::Measure;
pub(crate) use measure::dimension;
pub use money::{Currency, Money};
pub use pitch::Pitch;
pub use pressure::Pressure;
pub use real_length::RealLength;
pub use speed::Speed;
pub use unit::Unit;
pub use volume::Volume;
pub use weight::Weight;
