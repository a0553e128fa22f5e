//! The work on the deck and on the tile round a post.
mod laps;
mod method;
mod top;

pub use laps::SheetLaps;
pub use method::Method;
pub use top::{TopFlashingCheck, asked_tuck, head_lap};
