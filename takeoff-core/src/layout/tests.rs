//! Tests of layouts: costs on paper, the stages of the search against enumeration, infeasible jobs, large jobs.
mod bisection;
mod costs;
mod handled_tiles;
mod infeasible;
mod intervals;
mod jobs;
mod large;
mod solving;
