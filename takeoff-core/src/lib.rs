//! Takeoff of posts through an existing tile roof.
#![forbid(unsafe_code)]
pub mod geometry;
pub mod profile;
pub mod spares;
pub mod units;
