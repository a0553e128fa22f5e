//! Points, rectangles, ellipses and polygons on the half-nanometre grid.
pub mod math;
