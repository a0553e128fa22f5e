//! Column generation: the linear program over all guillotine patterns, and the knapsack that prices them.
pub(super) mod cut_positions;
pub(super) mod grouping;
pub(super) mod knapsack;
pub(super) mod master;
mod simplex;
