//! Intervals of `v` along a rafter in which a post can stand.
//!
//! [`breakpoints`] lists in closed form the heights at which the work of a post may change. Between two of them the work
//! is constant ([`constant_work`]). [`feasible_intervals`] shortens each such stretch by the least margin.
//! [`permitted_ranges`] holds the limits that are no change of the work: outline, holes, setbacks, other posts.
//!
//! [`breakpoints`]: breakpoints::breakpoints
//! [`constant_work`]: constant_work::constant_work
mod breakpoints;
mod constant_work;
mod feasible;
mod permitted;

pub(crate) use feasible::{FeasibleInterval, feasible_intervals};
pub(crate) use permitted::{Exclusion, permitted_ranges};
