//! A polygon cut to a rectangle: exact decisions, new vertices rounded to the nanometre.
use std::cmp::Ordering;

use ethnum::I256;

use super::polygon::{ring_doubled_area, ring_edges, simplified};
use super::{Point, Polygon, Rect};
use crate::num::round_div;

/// The pieces of `polygon` inside `rect`, each a polygon of its own, in order of their lowest, then leftmost
/// vertex.
///
/// Only new vertices are rounded, to the whole nanometre, half away from zero. What has no interior is dropped.
pub fn clip(polygon: &Polygon, rect: &Rect) -> Vec<Polygon> {
    if rect.is_empty() {
        return Vec::new();
    }
    let mut rings = polygon.rings().to_vec();
    // Above the lower side; then the same after a quarter turn, four times, which ends where it began.
    for bound in [rect.lower, -rect.right, -rect.upper, rect.left] {
        rings = keep_above(&rings, bound);
        for point in rings.iter_mut().flatten() {
            *point = Point::new(point.v, -point.u);
        }
    }
    group(rings.into_iter().filter_map(simplified).collect())
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
fn keep_above(rings: &[Vec<Point>], bound: i64) -> Vec<Vec<Point>> {
    let mut whole = Vec::new();
    let mut chains: Vec<Vec<Point>> = Vec::new();
    let (mut starts, mut ends) = (Vec::new(), Vec::new());
    for ring in rings {
        if ring.iter().all(|p| p.v > bound) {
            whole.push(ring.clone());
            continue;
        }
        let Some(below) = ring.iter().position(|p| p.v <= bound) else { continue };
        let rotated: Vec<Point> = ring[below..].iter().chain(&ring[..below]).copied().collect();
        for edge in ring_edges(&rotated) {
            let (from_above, to_above) = (edge.from.v > bound, edge.to.v > bound);
            if !from_above && to_above {
                let at = on_line(edge.from, edge.to, bound);
                starts.push(Crossing { at, low: edge.from, high: edge.to, chain: chains.len() });
                chains.push(vec![at]);
            }
            let Some(chain) = chains.last_mut() else { continue };
            if to_above {
                chain.push(edge.to);
            } else if from_above {
                let at = on_line(edge.to, edge.from, bound);
                chain.push(at);
                ends.push(Crossing { at, low: edge.to, high: edge.from, chain: chains.len() - 1 });
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

/// Where the edge from `low` to `high` crosses the line `v = bound`, rounded to the whole nanometre.
fn on_line(low: Point, high: Point, bound: i64) -> Point {
    if low.u == high.u {
        return Point::new(low.u, bound);
    }
    let run = i128::from(high.u - low.u) * i128::from(bound - low.v);
    let rise = i128::from(high.v - low.v);
    let nm = round_div(i128::from(low.u) * rise + run, 2 * rise) as i64;
    Point::new(2 * nm, bound)
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
