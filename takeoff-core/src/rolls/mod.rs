//! Cutting plans.
mod bound;
mod check;
mod columns;
mod dive;
mod exact;
mod fill;
mod groups;
mod guillotine;
mod improve;
mod kinds;
mod layout;
mod place;
mod plan;
mod simplex;
mod sums;
#[cfg(test)]
mod tests;

pub use check::check;
pub use plan::{Cut, Misfit, Piece, Place, Plan, Roll, Section, Sheet, plan};
