//! The reasons for a layout, or for the lack of one.
//!
//! [`array_layout`] tells the placement of an array beside its baseline and its runners-up; [`limit_prices`] the saving
//! from one relaxed limit at a time; [`infeasibility`] an irreducible set of limits without a layout; [`nudges`] better
//! places of single posts.
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
