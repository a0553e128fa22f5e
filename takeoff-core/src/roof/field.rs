//! The tiled field: the outline with every eave moved down over the gutter.
use ethnum::I256;

use crate::geometry::{Point, Polygon, Rect, Segment, SlopePoint, clip, grid};
use crate::model::{EdgeKind, Outline, Slope};
use crate::num::round_div;
use crate::units::Length;

#[cfg(test)]
mod tests;

/// What is tiled of a slope.
#[derive(Clone, Debug)]
pub struct Field {
    polygon: Polygon,
    bounds: Rect,
    is_rectangle: bool,
    /// What each edge of the outer ring is, beside [`Polygon::rings`]' first ring before vertices were dropped.
    edges: Vec<(EdgeKind, Segment)>,
}

impl Field {
    /// The outline with each eave moved down by the overhang, the edges beside it extended along their own
    /// lines. New vertices are rounded to the nanometre.
    ///
    /// # Example
    ///
    /// A plain gable of 38 ft × 17 ft whose tile hangs 1 1/2 in over the eave has a field 17 ft 1 1/2 in tall.
    pub fn of(slope: &Slope) -> Field {
        Field::lowered(&slope.outline, &slope.edges, &slope.holes, slope.overhang)
    }

    /// As [`Field::of`], of an outline alone; tile hangs over its eaves by `overhang`, 0 or more.
    pub fn new(outline: &Outline, overhang: Length) -> Field {
        Field::lowered(&outline.corners, &outline.edges, &outline.holes, overhang)
    }

    fn lowered(
        outline: &[SlopePoint],
        edges: &[Option<EdgeKind>],
        holes: &[Vec<SlopePoint>],
        overhang: Length,
    ) -> Field {
        let outline: Vec<Point> = outline.iter().map(|&p| Point::from(p)).collect();
        let n = outline.len();
        let drop = grid(overhang);
        let line = |i: usize| {
            let down = if edges[i] == Some(EdgeKind::Eave) { drop } else { 0 };
            let lowered = |p: Point| Point::new(p.u, p.v - down);
            Segment { from: lowered(outline[i]), to: lowered(outline[(i + 1) % n]) }
        };
        let ring: Vec<Point> = (0..n).map(|i| meeting_point(line((i + n - 1) % n), line(i))).collect();
        let edges = (0..n)
            .filter_map(|i| Some((edges[i]?, Segment { from: ring[i], to: ring[(i + 1) % n] })))
            .collect();
        let holes = holes.iter().map(|hole| hole.iter().map(|&p| Point::from(p)).collect());
        let polygon = Polygon::new(std::iter::once(ring).chain(holes).collect());
        let bounds = polygon.bounds();
        let is_rectangle = polygon.rings().len() == 1
            && polygon.rings()[0].len() == 4
            && polygon.rings()[0].iter().all(|p| bounds.corners().contains(p));
        Field { polygon, bounds, is_rectangle, edges }
    }

    /// The field as a polygon.
    pub fn polygon(&self) -> &Polygon {
        &self.polygon
    }

    /// Its bounding rectangle.
    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    /// Its tagged edges of some kinds.
    pub fn edges(&self, kinds: &[EdgeKind]) -> impl Iterator<Item = (EdgeKind, Segment)> {
        self.edges.iter().filter(move |(kind, _)| kinds.contains(kind)).copied()
    }

    /// Whether a rectangle lies wholly in the field; its sides may lie on the field's edges.
    pub fn covers(&self, rect: &Rect) -> bool {
        if self.is_rectangle {
            return self.bounds.intersection(rect) == *rect;
        }
        !self.polygon.edges().any(|edge| rect.meets_segment(&edge))
            && self.polygon.contains(inner_point(rect))
    }

    /// The pieces of a rectangle inside the field.
    pub fn pieces_of(&self, rect: &Rect) -> Vec<Polygon> {
        if !self.bounds.meets(rect) {
            Vec::new()
        } else if self.polygon.edges().any(|edge| rect.meets_segment(&edge)) {
            clip(&self.polygon, rect)
        } else if self.polygon.contains(inner_point(rect)) {
            vec![Polygon::new(vec![rect.corners().to_vec()])]
        } else {
            Vec::new()
        }
    }

    /// The first edge above `at` on the vertical line through it, or `at` itself where there is none.
    pub fn edge_above(&self, at: Point) -> i64 {
        self.polygon.crossings_at(at.u).into_iter().find(|&v| v > at.v).unwrap_or(at.v)
    }

    /// How far one can go from a point of the field each way before an edge: the sides of a rectangle.
    pub fn reach_from(&self, at: Point) -> Rect {
        let (below, above) = around(&self.polygon.crossings_at(at.u), at.v);
        let (left, right) = around(&self.polygon.crossings_along(at.v), at.u);
        Rect::new(left, below, right, above)
    }

    /// The places `u` where the horizontal line at `v` crosses the field's boundary, ascending.
    pub fn edges_at_height(&self, v: i64) -> Vec<i64> {
        self.polygon.crossings_along(v)
    }

    /// Whether the field is a plain rectangle, so that each lap line runs from end to end.
    pub fn is_rectangle(&self) -> bool {
        self.is_rectangle
    }

    /// The highest place of the field on the vertical line at `u`.
    pub fn top_at(&self, u: i64) -> Option<i64> {
        if self.is_rectangle {
            return (self.bounds.left <= u && u <= self.bounds.right).then_some(self.bounds.upper);
        }
        self.polygon.crossings_at(u).last().copied()
    }
}

/// The places just below (or at) and just above `x` in an ascending list; `x` itself where there is none.
fn around(places: &[i64], x: i64) -> (i64, i64) {
    let after = places.partition_point(|&place| place <= x);
    let before = after.checked_sub(1).map_or(x, |i| places[i]);
    (before, places.get(after).copied().unwrap_or(x))
}

/// A point inside a rectangle that has an interior of at least two grid steps.
fn inner_point(rect: &Rect) -> Point {
    Point::new(rect.left + (rect.right - rect.left) / 2, rect.lower + (rect.upper - rect.lower) / 2)
}

/// Where two lines meet, rounded to the nanometre; the start of the second where they run alongside.
fn meeting_point(first: Segment, second: Segment) -> Point {
    let wide = |x: i64| I256::from(x);
    let (du1, dv1) = (wide(first.to.u - first.from.u), wide(first.to.v - first.from.v));
    let (du2, dv2) = (wide(second.to.u - second.from.u), wide(second.to.v - second.from.v));
    let den = du1 * dv2 - dv1 * du2;
    if den == I256::ZERO || first.to == second.from {
        return second.from;
    }
    // second.from + t·d2 with t = ((second.from − first.from) × d1) / (d1 × d2)
    let (pu, pv) = (wide(second.from.u - first.from.u), wide(second.from.v - first.from.v));
    let num = pu * dv1 - pv * du1;
    let coordinate = |start: i64, step: I256| {
        let (num, den) = (wide(start) * den + num * step, den * I256::from(2));
        2 * round_div(num, den).as_i64()
    };
    Point::new(coordinate(second.from.u, du2), coordinate(second.from.v, dv2))
}
