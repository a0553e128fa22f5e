//! What the tests of the whole share: the fixtures, the command, and how expected files are written.
mod answer;
mod case;
mod command;
mod fold;

pub use answer::{codes_of, takeoff_of};
pub use case::{Case, SCHEMA, root};
pub use command::command;
pub use fold::fold;
