//! The posts of a job that a layout replaces.
use crate::geometry::Point;
use crate::model::{Array, Post, Slope};

/// Whether a layout replaces a post: it is below an array with rails and not fixed.
pub(crate) fn is_replaced(slope: &Slope, post: &Post) -> bool {
    !post.fixed && array_above(slope, post).is_some()
}

/// The index of the array with rails above a post.
pub(crate) fn array_above(slope: &Slope, post: &Post) -> Option<usize> {
    let covers = |array: &Array| array.rails.is_some() && array.covers(Point::from(post.at));
    slope.arrays.iter().position(covers)
}
