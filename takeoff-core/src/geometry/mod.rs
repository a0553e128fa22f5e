//! Points, rectangles, ellipses and polygons on a grid of half-nanometres.
//!
//! # Why half-nanometres?
//!
//! Lengths are whole nanometres, so the half of a width may end in `.5`. On a grid twice as fine every
//! centre, corner and semi-axis is whole, and "does this opening meet this tile" is decided in integers,
//! without tolerance. *Meeting* is of interiors: what only touches does not meet.
mod arc;
mod clip;
mod ellipse;

mod point;
mod polygon;
mod rect;
mod slope_point;

#[cfg(test)]
mod tests;

pub use arc::ellipse_arc_length;
pub use clip::clip;
pub use ellipse::Ellipse;
pub use point::{GRID_PER_MM, Point, grid, half, to_mm, whole};
pub use polygon::{Polygon, Segment};
pub use rect::Rect;
pub use slope_point::SlopePoint;
