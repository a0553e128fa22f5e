//! The job: what is written in a job file, every problem in it, and the validated model.
mod model;
mod problem;

pub use model::*;
pub use problem::{Problem, Severity};
