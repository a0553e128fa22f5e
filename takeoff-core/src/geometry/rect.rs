//! A rectangle with sides along `u` and `v`.
use super::{Point, Segment, to_mm};

/// A rectangle with sides along `u` and `v`, in grid steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rect {
    /// Least `u`.
    pub left: i64,
    /// Least `v`.
    pub lower: i64,
    /// Greatest `u`.
    pub right: i64,
    /// Greatest `v`.
    pub upper: i64,
}

impl Rect {
    /// A rectangle from its four sides.
    pub const fn new(left: i64, lower: i64, right: i64, upper: i64) -> Rect {
        Rect { left, lower, right, upper }
    }

    /// Whether the interiors meet; touching is not meeting.
    pub fn meets(&self, other: &Rect) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.lower < other.upper
            && other.lower < self.upper
    }

    /// The common part; empty (no interior) when the two don't meet.
    pub fn intersection(&self, other: &Rect) -> Rect {
        Rect {
            left: self.left.max(other.left),
            lower: self.lower.max(other.lower),
            right: self.right.min(other.right),
            upper: self.upper.min(other.upper),
        }
    }

    /// The bounding rectangle of both.
    pub fn union(&self, other: &Rect) -> Rect {
        Rect {
            left: self.left.min(other.left),
            lower: self.lower.min(other.lower),
            right: self.right.max(other.right),
            upper: self.upper.max(other.upper),
        }
    }

    /// Grown by `by` on every side.
    pub fn grown(&self, by: i64) -> Rect {
        Rect::new(self.left - by, self.lower - by, self.right + by, self.upper + by)
    }

    /// Whether it has no interior.
    pub fn is_empty(&self) -> bool {
        self.left >= self.right || self.lower >= self.upper
    }

    /// Whether the gap between the two is less than `gap` in both `u` and `v`.
    pub fn nearer_than(&self, other: &Rect, gap: i64) -> bool {
        self.grown(gap).meets(other)
    }

    /// Its corners, counter-clockwise from the lower left.
    pub fn corners(&self) -> [Point; 4] {
        [
            Point::new(self.left, self.lower),
            Point::new(self.right, self.lower),
            Point::new(self.right, self.upper),
            Point::new(self.left, self.upper),
        ]
    }

    /// Whether its interior meets a closed segment. Two convex sets are apart when some line parts them; in
    /// the plane it is enough to try the directions of the rectangle's sides and of the segment.
    pub fn meets_segment(&self, segment: &Segment) -> bool {
        let Segment { from, to } = *segment;
        let beside = from.u.max(to.u) <= self.left
            || from.u.min(to.u) >= self.right
            || from.v.max(to.v) <= self.lower
            || from.v.min(to.v) >= self.upper;
        if beside || self.is_empty() {
            return false;
        }
        let sides = self.corners().map(|corner| from.cross(to, corner));
        from == to || (sides.iter().any(|&s| s > 0) && sides.iter().any(|&s| s < 0))
    }

    /// `[left, lower, right, upper]` in millimetres.
    pub fn mm(&self) -> [f64; 4] {
        [to_mm(self.left), to_mm(self.lower), to_mm(self.right), to_mm(self.upper)]
    }
}
