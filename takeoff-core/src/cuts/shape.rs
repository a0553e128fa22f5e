//! The outline of an opening: one post's ellipse, or the rectangle round several.
use crate::geometry::{Ellipse, Point, Polygon, Rect, Segment};

/// An opening as it is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// One post's opening.
    Ellipse(Ellipse),
    /// Several openings judged as one: their bounding rectangle.
    Rect(Rect),
}

impl Shape {
    /// The bounding rectangle.
    pub fn bounds(&self) -> Rect {
        match self {
            Shape::Ellipse(ellipse) => ellipse.bounds(),
            Shape::Rect(rect) => *rect,
        }
    }

    /// Grown on every side (an ellipse by its semi-axes).
    pub fn grown(&self, by: i64) -> Shape {
        match self {
            Shape::Ellipse(ellipse) => Shape::Ellipse(ellipse.grown(by)),
            Shape::Rect(rect) => Shape::Rect(rect.grown(by)),
        }
    }

    /// Whether the interior meets that of a rectangle.
    pub fn meets_rect(&self, rect: &Rect) -> bool {
        match self {
            Shape::Ellipse(ellipse) => ellipse.meets_rect(rect),
            Shape::Rect(own) => own.meets(rect),
        }
    }

    /// Whether the interior meets a closed segment.
    pub fn meets_segment(&self, segment: &Segment) -> bool {
        match self {
            Shape::Ellipse(ellipse) => ellipse.meets_segment(segment),
            Shape::Rect(rect) => rect.meets_segment(segment),
        }
    }

    /// Whether the interior meets that of a polygon.
    pub fn meets_polygon(&self, polygon: &Polygon) -> bool {
        polygon.edges().any(|edge| self.meets_segment(&edge)) || polygon.contains(self.centre())
    }

    /// Whether the polygon lies wholly inside.
    pub fn covers(&self, polygon: &Polygon) -> bool {
        polygon.rings().iter().take(1).flatten().all(|&p| self.contains(p))
    }

    fn contains(&self, p: Point) -> bool {
        match self {
            Shape::Ellipse(ellipse) => ellipse.contains(p),
            Shape::Rect(r) => r.left < p.u && p.u < r.right && r.lower < p.v && p.v < r.upper,
        }
    }

    fn centre(&self) -> Point {
        match self {
            Shape::Ellipse(ellipse) => ellipse.centre,
            Shape::Rect(r) => Point::new(r.left + (r.right - r.left) / 2, r.lower + (r.upper - r.lower) / 2),
        }
    }
}
