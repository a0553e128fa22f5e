//! What the tests of the whole share: the fixtures, the command.
mod answer;
mod case;
mod command;
mod folder;
mod public_api;

pub use answer::{codes_of, takeoff_of};
pub use case::{Case, SCHEMA, root};
pub use command::command;
pub use folder::Folder;
pub use public_api::{PUBLIC_API, public_api};
