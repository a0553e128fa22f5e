//! Checks of the reports.
mod lines;
