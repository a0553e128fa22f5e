//! Where the posts of a job's arrays go so that they cost least.
mod allowed;
mod answer;
mod apply;
mod changes;
pub mod check;
mod clash;
mod constraint;
mod cost;
mod foot;
mod handled;
mod heights;
mod lay;
mod map;
mod mark;
mod nudge;
mod path;
mod rail;
mod rates;
mod result;
mod score;
mod search;
mod settle;
mod spans;
mod work;

#[cfg(test)]
mod tests;

pub use answer::{LaidOut, lay_out, layout};
pub use check::check;
pub use cost::{Cost, additive, cost};
pub use map::ShiftMap;
pub use result::*;
