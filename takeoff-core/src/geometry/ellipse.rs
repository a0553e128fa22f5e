//! An ellipse with axes along `u` and `v`.
use ethnum::I256;

use super::{Point, Rect, Segment, SlopePoint, half};
use crate::units::Length;

/// An ellipse with axes along `u` and `v`, in grid steps. Semi-axes are at most 1 m and above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ellipse {
    /// Centre.
    pub centre: Point,
    /// Semi-axis along `u`.
    pub a: i64,
    /// Semi-axis along `v`.
    pub b: i64,
}

impl Ellipse {
    /// A circle round a place on the slope.
    #[must_use]
    pub fn circle(centre: SlopePoint, diameter: Length) -> Ellipse {
        let radius = half(diameter);
        Ellipse { centre: Point::from(centre), a: radius, b: radius }
    }

    /// With both semi-axes longer by `by`.
    pub fn grown(&self, by: i64) -> Ellipse {
        Ellipse { centre: self.centre, a: self.a + by, b: self.b + by }
    }

    /// The bounding rectangle.
    pub fn bounds(&self) -> Rect {
        let Point { u, v } = self.centre;
        Rect::new(u - self.a, v - self.b, u + self.a, v + self.b)
    }

    /// Whether a point lies inside; a point on the curve does not.
    pub fn contains(&self, point: Point) -> bool {
        self.contains_offset(point.u - self.centre.u, point.v - self.centre.v)
    }

    /// `b²·du² + a²·dv² < a²·b²`, in `i128` after a look at the bounds: (2·10⁹)⁴ fits.
    fn contains_offset(&self, du: i64, dv: i64) -> bool {
        if du.abs() >= self.a || dv.abs() >= self.b {
            return false;
        }
        let [a, b, du, dv] = [self.a, self.b, du, dv].map(i128::from);
        b * b * du * du + a * a * dv * dv < a * a * b * b
    }

    /// Whether the interiors of ellipse and rectangle meet: the rectangle's point nearest to the centre lies
    /// inside.
    pub fn meets_rect(&self, rect: &Rect) -> bool {
        let Point { u, v } = self.centre;
        self.contains_offset(u.clamp(rect.left, rect.right) - u, v.clamp(rect.lower, rect.upper) - v)
    }

    /// Whether the interior meets a closed segment.
    pub fn meets_segment(&self, segment: &Segment) -> bool {
        let Segment { from, to } = *segment;
        if from.u == to.u || from.v == to.v {
            let rect = Rect::new(from.u.min(to.u), from.v.min(to.v), from.u.max(to.u), from.v.max(to.v));
            return self.meets_rect(&rect);
        }
        if self.contains(from) || self.contains(to) {
            return true;
        }
        if !self.bounds().meets_segment(segment) {
            return false;
        }
        self.meets_inner_part(from, to)
    }

    /// Whether the interior meets a slanted segment between its ends: the line comes nearer than the curve,
    /// and does so between the ends.
    ///
    /// Scaled by `b` and `a` the ellipse is a circle of radius `a·b`; with `p` the offset of `from`, `d` the
    /// segment and `n = b²·du² + a²·dv²`, the line's distance is below the radius when `(p × d)² < n`, and
    /// the nearest point lies at `t = −(b²·pu·du + a²·pv·dv) / n`.
    fn meets_inner_part(&self, from: Point, to: Point) -> bool {
        let wide = |x: i64| I256::from(x);
        let (a2, b2) = (wide(self.a) * wide(self.a), wide(self.b) * wide(self.b));
        let (pu, pv) = (wide(from.u - self.centre.u), wide(from.v - self.centre.v));
        let (du, dv) = (wide(to.u - from.u), wide(to.v - from.v));
        let n = b2 * du * du + a2 * dv * dv;
        let t = -(b2 * pu * du + a2 * pv * dv);
        let cross = pu * dv - pv * du;
        t > I256::ZERO && t < n && cross * cross < n
    }
}
