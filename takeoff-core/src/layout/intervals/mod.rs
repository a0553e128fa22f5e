//! Feasible intervals of a post along a rafter.
mod breakpoints;
mod feasible;
mod permitted;

pub(crate) use feasible::*;
pub(crate) use permitted::*;
