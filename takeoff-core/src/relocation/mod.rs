//! What changes when a post moves: its state, its margin, and the nearest better place.
//!
//! # Where does a margin end?
//!
//! At the first whole nanometre of shift where the situation, the kind of a cut, the deck method or a check of the tile
//! flashing changes. It also ends where the opening comes within the least web of another post's opening, because the
//! two are then judged as one.
//!
//! # Which place is better?
//!
//! The one with fewer tiles cut, then without a notch, then the nearer one, then the upper one. Its margin is shown.
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
