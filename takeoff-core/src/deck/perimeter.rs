//! The strip along the roof's edges in which every tile is fastened.
use ethnum::I256;

use crate::geometry::{Point, Polygon, Segment, grid};
use crate::model::Slope;

/// The strip along the named edges of a slope: all that is nearer to one of them than the given width.
///
/// The edges are those of the outline, not of the tile that hangs over the eave.
///
/// # Example
///
/// A width of 36 in along an eave at `v = 0`: a tile whose visible face begins at 35 in lies in the strip, one
/// that begins at 36 in does not.
#[derive(Clone, Debug)]
pub struct Perimeter {
    width: i64,
    edges: Vec<Segment>,
}

impl Perimeter {
    /// The strip of a slope, if the job names one.
    pub fn of(slope: &Slope) -> Option<Perimeter> {
        let perimeter = slope.perimeter.as_ref()?;
        let outline = slope.outline.iter().map(|&p| Point::from(p));
        let next = outline.clone().cycle().skip(1);
        let edges = outline.zip(next).zip(&slope.edges);
        let named = edges.filter(|(_, kind)| kind.is_some_and(|kind| perimeter.edges.contains(&kind)));
        let edges = named.map(|((from, to), _)| Segment { from, to }).collect();
        Some(Perimeter { width: grid(perimeter.width), edges })
    }

    /// Whether one of several polygons meets the strip.
    pub fn meets_any(&self, polygons: &[Polygon]) -> bool {
        polygons.iter().any(|polygon| self.edges.iter().any(|edge| self.reaches(edge, polygon)))
    }

    fn reaches(&self, edge: &Segment, polygon: &Polygon) -> bool {
        let near = polygon.bounds().grown(self.width).meets_segment(edge);
        near && (polygon.edges().any(|side| nearer(edge, &side, self.width)) || polygon.contains(edge.from))
    }
}

/// Whether two segments are nearer to each other than `reach`: they cross, or an end of one is near the other.
fn nearer(a: &Segment, b: &Segment, reach: i64) -> bool {
    cross(a, b)
        || [a.from, a.to].into_iter().any(|end| point_nearer(end, b, reach))
        || [b.from, b.to].into_iter().any(|end| point_nearer(end, a, reach))
}

fn cross(a: &Segment, b: &Segment) -> bool {
    let parts = |line: &Segment, other: &Segment| {
        let sides = [other.from, other.to].map(|end| line.from.cross(line.to, end).signum());
        sides[0] * sides[1] < 0
    };
    parts(a, b) && parts(b, a)
}

/// Whether a point is nearer to a segment than `reach`: beside it by the height over it, beyond an end by the
/// distance from that end.
fn point_nearer(point: Point, segment: &Segment, reach: i64) -> bool {
    let Segment { from, to } = *segment;
    let dot = |a: Point, b: Point| i128::from(a.u) * i128::from(b.u) + i128::from(a.v) * i128::from(b.v);
    let offset = |a: Point, b: Point| Point::new(b.u - a.u, b.v - a.v);
    let (along, beside) = (offset(from, to), offset(from, point));
    let (square, shadow) = (dot(along, along), dot(along, beside));
    let reach_square = i128::from(reach) * i128::from(reach);
    if shadow <= 0 {
        dot(beside, beside) < reach_square
    } else if shadow >= square {
        let beyond = offset(to, point);
        dot(beyond, beyond) < reach_square
    } else {
        let height = I256::from(from.cross(to, point));
        height * height < I256::from(reach_square) * I256::from(square)
    }
}
