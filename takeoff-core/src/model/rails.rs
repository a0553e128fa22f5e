//! The rails of an array, and what holds for the posts below them.
use std::sync::Arc;

use super::Assembly;
use crate::geometry::{Point, SlopePoint};
use crate::units::Length;

/// Reach within which a layout may move an array from its place in the job; each 0 or more.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shift {
    /// Toward −u.
    pub left: Length,
    /// Toward +u.
    pub right: Length,
    /// Toward −v.
    pub down: Length,
    /// Toward +v.
    pub up: Length,
}

/// The rails of an array: one a clamp window in every row of modules, each along the whole width of the array.
#[derive(Clone, Debug)]
pub struct Rails {
    /// Assembly of each of their posts.
    pub(crate) assembly: Arc<Assembly>,
    /// Clamp windows, up from a module's lower edge: ascending, apart by the least distance.
    pub(crate) clamps: Vec<ClampWindow>,
    /// From post to post along a rail, at most.
    pub(crate) greatest_span: Length,
    /// From the last post to the end of the rail, at most.
    pub(crate) greatest_overhang: Length,
    /// Zones in which less is allowed.
    pub(crate) zones: Vec<SpanZone>,
    /// From post to post along a rail, and from rail to rail, at least; zero where the job asks for none.
    pub(crate) least_distance: Length,
    /// Rails take turns in so many rafters: rail `i` of the array, counted from the lowest, stands on rafters whose
    /// numbers leave the same rest as `i` plus a constant of the array. 1 is not staggered.
    pub(crate) stagger: u32,
    /// A post may stand in the middle of a bay, on blocking.
    pub(crate) blocking: bool,
}

/// From where to where a rail may be clamped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClampWindow {
    /// From the module's lower edge up, at least.
    pub from: Length,
    /// At most.
    pub to: Length,
}

/// A rectangle of the slope in which rails span less: a span or an overhang that meets it keeps to it.
#[derive(Clone, Debug)]
pub struct SpanZone {
    pub(crate) name: String,
    /// Its lower left corner.
    pub(crate) from: SlopePoint,
    /// Its upper right corner.
    pub(crate) to: SlopePoint,
    pub(crate) greatest_span: Length,
    pub(crate) greatest_overhang: Length,
}

impl SpanZone {
    /// Whether a rail at a height meets it on its way from `from` to `to`, all in grid steps; touching counts.
    pub(crate) fn meets(&self, from: i64, to: i64, v: i64) -> bool {
        let (lower_left, upper_right) = (Point::from(self.from), Point::from(self.to));
        (lower_left.v..=upper_right.v).contains(&v) && from <= upper_right.u && to >= lower_left.u
    }
}
