//! A polygon with holes, its interior on the left of every ring.
use super::{GRID_PER_MM, Point, Rect};
use crate::num::round_div;

/// A straight piece of a boundary, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Segment {
    /// Where it begins; the interior lies on its left.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

/// A polygon: rings with the interior on their left, the outer one counter-clockwise and first, then holes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Polygon {
    rings: Vec<Vec<Point>>,
}

impl Polygon {
    /// From rings with the interior on their left, the outer one first.
    pub fn new(rings: Vec<Vec<Point>>) -> Polygon {
        Polygon { rings }
    }

    /// The outer ring, then the holes.
    pub fn rings(&self) -> &[Vec<Point>] {
        &self.rings
    }

    /// Every edge, ring by ring.
    pub fn edges(&self) -> impl Iterator<Item = Segment> + '_ {
        self.rings.iter().flat_map(|ring| ring_edges(ring))
    }

    /// The bounding rectangle.
    pub fn bounds(&self) -> Rect {
        let empty = Rect::new(i64::MAX, i64::MAX, i64::MIN, i64::MIN);
        self.rings.iter().flatten().fold(empty, |r, p| {
            Rect::new(r.left.min(p.u), r.lower.min(p.v), r.right.max(p.u), r.upper.max(p.v))
        })
    }

    /// Whether a point lies inside; a point on the boundary may get either answer.
    pub fn contains(&self, point: Point) -> bool {
        self.edges().filter(|edge| edge.is_crossed_by_ray_from(point)).count() % 2 == 1
    }

    /// Whether a point lies on the boundary.
    pub fn has_on_boundary(&self, point: Point) -> bool {
        self.edges().any(|e| {
            e.from.cross(e.to, point) == 0
                && (e.from.u.min(e.to.u)..=e.from.u.max(e.to.u)).contains(&point.u)
                && (e.from.v.min(e.to.v)..=e.from.v.max(e.to.v)).contains(&point.v)
        })
    }

    /// Area in mm² (shoelace formula).
    pub fn area_mm2(&self) -> f64 {
        self.rings.iter().map(|ring| ring_doubled_area(ring) as f64).sum::<f64>()
            / (2.0 * GRID_PER_MM * GRID_PER_MM)
    }

    /// The places `v` where the vertical line at `u` crosses the boundary, ascending, rounded to the grid.
    ///
    /// The line is taken a hair to the right of `u`, so that a vertex counts once.
    pub fn crossings_at(&self, u: i64) -> Vec<i64> {
        let mut crossings: Vec<i64> = self.edges().filter_map(|edge| edge.v_at(u)).collect();
        crossings.sort_unstable();
        crossings
    }

    /// The places `u` where the horizontal line at `v` crosses the boundary, ascending, rounded to the grid.
    pub fn crossings_along(&self, v: i64) -> Vec<i64> {
        let turned = |p: Point| Point::new(p.v, p.u);
        let edges = self.edges().map(|e| Segment { from: turned(e.from), to: turned(e.to) });
        let mut crossings: Vec<i64> = edges.filter_map(|edge| edge.v_at(v)).collect();
        crossings.sort_unstable();
        crossings
    }
}

impl Segment {
    /// `v` where the segment crosses the vertical line a hair to the right of `u`.
    fn v_at(&self, u: i64) -> Option<i64> {
        let (a, b) = (self.from, self.to);
        if (a.u <= u) == (b.u <= u) {
            return None;
        }
        let run = i128::from(b.u - a.u);
        let rise = i128::from(b.v - a.v) * i128::from(u - a.u);
        Some(a.v + round_div(rise, run) as i64)
    }

    fn is_crossed_by_ray_from(&self, point: Point) -> bool {
        let (a, b) = (self.from, self.to);
        if (a.v <= point.v) == (b.v <= point.v) {
            return false;
        }
        let side = a.cross(b, point);
        if b.v > a.v { side > 0 } else { side < 0 }
    }
}

/// Edges of one ring.
pub(super) fn ring_edges(ring: &[Point]) -> impl Iterator<Item = Segment> + '_ {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(&from, &to)| Segment { from, to })
}

/// Twice the signed area of a ring: positive when counter-clockwise.
pub(super) fn ring_doubled_area(ring: &[Point]) -> i128 {
    match ring.first() {
        None => 0,
        Some(&origin) => ring_edges(ring).map(|e| origin.cross(e.from, e.to)).sum(),
    }
}

/// A ring without repeated and collinear vertices; `None` when nothing is left of it.
pub(super) fn simplified(ring: Vec<Point>) -> Option<Vec<Point>> {
    let mut kept: Vec<Point> = Vec::with_capacity(ring.len());
    for point in ring {
        kept.push(point);
        while drop_middle(&mut kept) {}
    }
    // The seam: the first and last vertices may repeat or lie on a line with their neighbours.
    while let [first, second, .., before, last] = kept[..] {
        if before.cross(last, first) == 0 {
            kept.pop();
        } else if last.cross(first, second) == 0 {
            kept.remove(0);
        } else {
            return Some(kept);
        }
    }
    match kept[..] {
        [a, b, c] if a.cross(b, c) != 0 => Some(kept),
        _ => None,
    }
}

/// Drops the last vertex but one when it adds no corner.
fn drop_middle(kept: &mut Vec<Point>) -> bool {
    match kept[..] {
        [.., a, b] if a == b => {
            kept.pop();
            true
        }
        [.., a, b, c] if a.cross(b, c) == 0 => {
            kept.remove(kept.len() - 2);
            true
        }
        _ => false,
    }
}
