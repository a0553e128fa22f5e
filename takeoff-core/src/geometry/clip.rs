//! A polygon cut to a rectangle: exact decisions, new vertices rounded to the nanometre.
use std::cmp::Ordering;

use ethnum::I256;

use super::polygon::{ring_doubled_area, round_div, simplified};
use super::{Point, Polygon, Rect, Segment};

/// The pieces of `polygon` inside `rect`, each a polygon of its own, in order of their lowest, then leftmost
/// vertex.
///
/// Only new vertices are rounded, once, to the whole nanometre, half away from zero: where the polygon's own edge crosses a
/// side of the rectangle, also when another side has cut that edge before. What has no interior is dropped.
pub fn clip(polygon: &Polygon, rect: &Rect) -> Vec<Polygon> {
    if rect.is_empty() {
        return Vec::new();
    }
    let mut rings: Vec<Vec<Vertex>> = polygon.rings().iter().map(|ring| vertices(ring)).collect();
    // Above the lower side; then the same after a quarter turn, four times, which ends where it began.
    for bound in [rect.lower, -rect.right, -rect.upper, rect.left] {
        rings = keep_above(&rings, bound);
        rings.iter_mut().flatten().for_each(Vertex::turn);
    }
    let rings = rings.into_iter().map(|ring| ring.into_iter().map(|vertex| vertex.at).collect());
    group(rings.filter_map(simplified).collect())
}

/// A corner of a ring, and the edge of the polygon on which the ring leaves it.
///
/// What is left of an edge ends at rounded points. The steeper it meets a side, the less that matters; but the rest of a rake
/// 0.01 mm out of true, cut again, would end elsewhere by a thousand times the rounding.
#[derive(Clone, Copy)]
struct Vertex {
    at: Point,
    /// `None` where the ring runs along a side of the rectangle.
    edge: Option<Segment>,
}

impl Vertex {
    /// A quarter turn.
    fn turn(&mut self) {
        let turned = |p: Point| Point::new(p.v, -p.u);
        self.at = turned(self.at);
        self.edge = self.edge.map(|edge| Segment { from: turned(edge.from), to: turned(edge.to) });
    }
}

fn vertices(ring: &[Point]) -> Vec<Vertex> {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(&from, &to)| Vertex { at: from, edge: Some(Segment { from, to }) }).collect()
}

/// Where a ring passes through the line, seen a hair above it.
struct Crossing {
    /// On the line, rounded.
    at: Point,
    /// The edge, with its lower end first.
    low: Point,
    high: Point,
    /// The piece of boundary above the line that begins or ends here.
    chain: usize,
}

/// What lies above `v = bound` of the region that the rings enclose. A vertex on the line counts as below it.
fn keep_above(rings: &[Vec<Vertex>], bound: i64) -> Vec<Vec<Vertex>> {
    let mut whole = Vec::new();
    let mut chains: Vec<Vec<Vertex>> = Vec::new();
    let (mut starts, mut ends) = (Vec::new(), Vec::new());
    for ring in rings {
        if ring.iter().all(|vertex| vertex.at.v > bound) {
            whole.push(ring.clone());
            continue;
        }
        let Some(below) = ring.iter().position(|vertex| vertex.at.v <= bound) else { continue };
        let rotated: Vec<Vertex> = ring[below..].iter().chain(&ring[..below]).copied().collect();
        for (from, to) in rotated.iter().zip(rotated.iter().cycle().skip(1)) {
            let (from_above, to_above) = (from.at.v > bound, to.at.v > bound);
            if !from_above && to_above {
                let at = on_line(from.at, to.at, from.edge, bound);
                starts.push(Crossing { at, low: from.at, high: to.at, chain: chains.len() });
                chains.push(vec![Vertex { at, edge: from.edge }]);
            }
            let Some(chain) = chains.last_mut() else { continue };
            if to_above {
                chain.push(*to);
            } else if from_above {
                let at = on_line(to.at, from.at, from.edge, bound);
                chain.push(Vertex { at, edge: None });
                ends.push(Crossing { at, low: to.at, high: from.at, chain: chains.len() - 1 });
            }
        }
    }
    // With the interior on the left, boundary comes down on the left of each stretch of interior and goes up
    // on its right: the first end is joined to the first start, and so on.
    starts.sort_by(|a, b| order_above(a, b, bound));
    ends.sort_by(|a, b| order_above(a, b, bound));
    let mut next = vec![0; chains.len()];
    for (end, start) in ends.iter().zip(&starts) {
        next[end.chain] = start.chain;
    }
    let mut taken = vec![false; chains.len()];
    for first in 0..chains.len() {
        let mut ring = Vec::new();
        let mut chain = first;
        while !taken[chain] {
            taken[chain] = true;
            ring.append(&mut chains[chain]);
            chain = next[chain];
        }
        if !ring.is_empty() {
            whole.push(ring);
        }
    }
    whole
}

/// Where what is left of an edge, from `low` to `high`, crosses the line `v = bound`: on the whole edge, rounded to the whole
/// nanometre, and not beyond `low` and `high`.
fn on_line(low: Point, high: Point, edge: Option<Segment>, bound: i64) -> Point {
    if low.u == high.u {
        return Point::new(low.u, bound);
    }
    let (from, to) = match edge {
        Some(Segment { from, to }) if from.v < to.v => (from, to),
        Some(Segment { from, to }) if from.v > to.v => (to, from),
        _ => (low, high),
    };
    let run = i128::from(to.u - from.u) * i128::from(bound - from.v);
    let rise = i128::from(to.v - from.v);
    let nm = round_div(i128::from(from.u) * rise + run, 2 * rise);
    let (least, greatest) = (low.u.min(high.u), low.u.max(high.u));
    Point::new((2 * nm).clamp(least - least.rem_euclid(2), greatest + greatest.rem_euclid(2)), bound)
}

/// Which of two crossings lies further left, a hair above the line.
fn order_above(a: &Crossing, b: &Crossing, bound: i64) -> Ordering {
    let on_line = a.at.u.cmp(&b.at.u).then_with(|| {
        let (num_a, den_a) = exact(a, bound);
        let (num_b, den_b) = exact(b, bound);
        (num_a * den_b).cmp(&(num_b * den_a))
    });
    on_line.then_with(|| {
        let slope = |c: &Crossing| (i128::from(c.high.u - c.low.u), i128::from(c.high.v - c.low.v));
        let ((run_a, rise_a), (run_b, rise_b)) = (slope(a), slope(b));
        (run_a * rise_b).cmp(&(run_b * rise_a))
    })
}

/// The exact place of a crossing, as numerator and positive denominator.
fn exact(c: &Crossing, bound: i64) -> (I256, I256) {
    let wide = |x: i64| I256::from(x);
    let rise = wide(c.high.v - c.low.v);
    (wide(c.low.u) * rise + wide(c.high.u - c.low.u) * wide(bound - c.low.v), rise)
}

/// Rings into polygons: each hole goes to the outer ring around it.
fn group(rings: Vec<Vec<Point>>) -> Vec<Polygon> {
    let (outers, holes): (Vec<_>, Vec<_>) = rings.into_iter().partition(|ring| ring_doubled_area(ring) > 0);
    let mut pieces: Vec<Vec<Vec<Point>>> = outers.into_iter().map(|outer| vec![outer]).collect();
    pieces.sort_by_key(|piece| piece[0].iter().map(|p| (p.v, p.u)).min());
    for hole in holes {
        let alone = pieces.len() == 1;
        let owner = pieces.iter_mut().find(|piece| {
            alone || {
                let outer = Polygon::new(vec![piece[0].clone()]);
                hole.iter().all(|&p| outer.contains(p) || outer.has_on_boundary(p))
            }
        });
        if let Some(piece) = owner {
            piece.push(hole);
        }
    }
    pieces.into_iter().map(Polygon::new).collect()
}
