//! The reasons for a layout, or for the lack of one.
//!
//! - `array_layout`: the placement of an array beside its baseline and its runners-up
//! - `figures`: totals of a job, before and after
//! - `limit_prices`: the saving from relaxing one limit at a time
//! - `nudges`: better places of single posts
//! - `infeasibility`: an irreducible set of limits without a layout, and the least relaxation of each
mod array_layout;
mod figures;
mod infeasibility;
mod limit_prices;
mod limit_words;
mod nudges;
mod relaxation;

pub(super) use array_layout::array_layout;
pub(super) use figures::figures;
pub(super) use infeasibility::infeasibility;
pub(super) use limit_prices::limit_prices;
pub(super) use nudges::nudges;
