//! Tests of layouts: what posts cost, the pieces of the search, and the search against trying everything.
mod cost;
mod handled;
mod jobs;
mod paths;
mod refused;
mod spans;
