//! Where the posts of a job's arrays go so that they cost least.
pub mod check;
mod explain;
mod graduations;
mod intervals;
mod objective;
mod placement;
mod post_cost;
mod rail;
mod result;
mod search;
mod solve;

#[cfg(test)]
mod tests;

pub use check::check;
pub use explain::{LaidOut, layout, place_posts};
pub use post_cost::{Cost, additive, cost};
pub use result::*;
pub use search::ShiftMap;
