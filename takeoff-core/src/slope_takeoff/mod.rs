//! The takeoff of one slope: its posts, cuts, tiles handled, patches, battens and blocking.
mod cut_row;
mod findings;
mod post_row;
mod result;
mod work;

pub use result::{ArrayTakeoff, Course, Cut, Fit, Nearest, PlaceTakeoff, PostTakeoff, SlopeTakeoff};
pub(crate) use work::{Worked, work};
