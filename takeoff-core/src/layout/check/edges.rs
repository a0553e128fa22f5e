//! Distances from edges, decided exactly and shown to the nearest nanometre.
use ethnum::I256;

use crate::geometry::{GRID_PER_MM, Point, Rect, Segment, grid, half};
use crate::model::Post;
use crate::num::math;
use crate::units::Length;

/// Whether a point is nearer than a limit (grid steps) to an edge: nearer than that to one of its ends, or beside it and
/// nearer than that to its line.
pub(super) fn point_is_near(point: Point, edge: &Segment, limit: i64) -> bool {
    let squared = |(u, v): (i128, i128)| u * u + v * v;
    let limit_squared = i128::from(limit) * i128::from(limit);
    let near_end = [edge.from, edge.to].iter().any(|&end| squared(difference(end, point)) < limit_squared);
    let length_squared = squared(difference(edge.from, edge.to));
    // The distance from the line is the cross product over the length of the edge.
    let cross = I256::from(edge.from.cross(edge.to, point));
    let near_line = cross * cross < I256::from(limit_squared) * I256::from(length_squared);
    near_end || (is_beside(point, edge) && near_line)
}

/// Whether a rectangle is nearer than a limit (grid steps) to an edge: the edge passes through it, one of its corners is near
/// the edge, or one end of the edge is near the rectangle.
pub(super) fn rect_is_near(rect: &Rect, edge: &Segment, limit: i64) -> bool {
    let end_is_near = |end: Point| {
        let (u, v) = outside_by(rect, end);
        u * u + v * v < i128::from(limit) * i128::from(limit)
    };
    limit > 0
        && (rect.meets_segment(edge)
            || rect.corners().into_iter().any(|corner| point_is_near(corner, edge, limit))
            || [edge.from, edge.to].into_iter().any(end_is_near))
}

/// The distance of a point from an edge.
pub(super) fn distance_of_point(point: Point, edge: &Segment) -> Length {
    to_length(steps_to_edge(point, edge))
}

/// The distance of a rectangle from an edge.
pub(super) fn distance_of_rect(rect: &Rect, edge: &Segment) -> Length {
    if rect.meets_segment(edge) {
        return Length::ZERO;
    }
    let corners = rect.corners().map(|corner| steps_to_edge(corner, edge));
    let ends = [edge.from, edge.to].map(|end| {
        let (u, v) = outside_by(rect, end);
        math::hypot(u as f64, v as f64)
    });
    to_length(corners.into_iter().chain(ends).fold(f64::INFINITY, f64::min))
}

/// The rectangle of a post's deck flashing.
pub(super) fn deck_flashing(post: &Post) -> Rect {
    let (at, flashing) = (Point::from(post.at), &post.assembly.deck_flashing);
    let aside = half(flashing.width);
    Rect::new(at.u - aside, at.v - grid(flashing.down), at.u + aside, at.v + grid(flashing.up))
}

fn difference(from: Point, to: Point) -> (i128, i128) {
    (i128::from(to.u) - i128::from(from.u), i128::from(to.v) - i128::from(from.v))
}

/// Whether the foot of the perpendicular from a point to the edge's line is between the edge's ends.
fn is_beside(point: Point, edge: &Segment) -> bool {
    let dot = |a: (i128, i128), b: (i128, i128)| a.0 * b.0 + a.1 * b.1;
    let forward = difference(edge.from, edge.to);
    let backward = difference(edge.to, edge.from);
    dot(forward, difference(edge.from, point)) > 0 && dot(backward, difference(edge.to, point)) > 0
}

fn steps_to_edge(point: Point, edge: &Segment) -> f64 {
    let length = |(u, v): (i128, i128)| math::hypot(u as f64, v as f64);
    if is_beside(point, edge) {
        return edge.from.cross(edge.to, point).unsigned_abs() as f64
            / length(difference(edge.from, edge.to));
    }
    length(difference(edge.from, point)).min(length(difference(edge.to, point)))
}

/// By how much a point is outside a rectangle, along the eave and up the slope; 0 within its sides.
fn outside_by(rect: &Rect, point: Point) -> (i128, i128) {
    let beyond = |place: i64, low: i64, high: i64| i128::from((low - place).max(place - high).max(0));
    (beyond(point.u, rect.left, rect.right), beyond(point.v, rect.lower, rect.upper))
}

fn to_length(steps: f64) -> Length {
    Length::nearest(steps / GRID_PER_MM * 1e6).unwrap_or(Length::LIMIT)
}
