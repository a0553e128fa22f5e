//! What changes when a post moves: its state, its margin, and the nearest better place.
mod margin;
mod nearest;
mod neighbours;
mod partners;
mod situation;
mod state;
#[cfg(test)]
mod tests;
mod thresholds;

pub use margin::{Margins, Others, margins};
pub use nearest::{Better, nearest};
pub use neighbours::Neighbours;
pub use partners::{Crowd, Partners};
pub use situation::Situation;
pub(crate) use state::Tally;
pub use state::{Mover, State};
pub(crate) use thresholds::{Axis, thresholds};
