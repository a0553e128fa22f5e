//! Takeoff of posts through an existing tile roof.
#![forbid(unsafe_code)]
pub mod api;
pub mod consumables;
pub mod cuts;
pub mod deck;
pub mod geometry;
pub mod job;
pub mod place;
pub mod profile;
pub mod report;
pub mod slope;
pub mod spares;
pub mod takeoff;
pub mod units;

#[cfg(test)]
mod testing;
