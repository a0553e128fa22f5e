//! The fields of a job file: which there are, and how each kind of value is read.
pub(super) mod collections;
pub(super) mod money;
pub(super) mod price_list;
pub(super) mod quantities;
pub(super) mod raw;
pub(super) mod scalars;
pub(super) mod table_field;
