//! The takeoff of one slope: its posts, cuts, tiles handled, patches, battens and blocking.
mod cut_row;
mod findings;
mod post_row;
mod result;
mod work;

pub use result::{
    ArrayTakeoff, Columns, Course, Cut, Margin, Nearest, Opening, PlaceTakeoff, PostTakeoff, SlopeTakeoff,
    TopCheck,
};
pub(crate) use work::{Worked, work};
