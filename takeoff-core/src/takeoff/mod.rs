//! From a job to its takeoff: reads like the trade's own steps.
mod result;
pub use result::*;
