//! Lengths in whole nanometres, pitches, areas and volumes: parse and display.
mod length;
pub use length::Length;
