//! From text to a document of values, and from a document to typed fields with their places.
pub(super) mod csv_table;
pub(super) mod decode;
pub(super) mod document;
pub(super) mod suggest;
pub(super) mod text;
