//! Tests of layouts: what posts cost, the pieces of the search, and the search against trying everything.
mod cost;
mod handled_tiles;
mod infeasible;
mod intervals;
mod jobs;
mod paths;
