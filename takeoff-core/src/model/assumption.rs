//! Assumptions in force.
use schemars::JsonSchema;
use serde::Serialize;

/// A value in force that somebody assumed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Assumption {
    /// What it is, in words.
    pub what: String,
    /// Its value with its unit, as shown.
    pub value: String,
    /// Whether the job file sets it (true) or it is a default (false).
    pub set_by_job: bool,
}
