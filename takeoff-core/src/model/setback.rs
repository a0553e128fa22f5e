//! Setbacks: how far posts keep from edges of a kind.
use ethnum::I256;

use super::{Assembly, EdgeKind};
use crate::geometry::{GRID_PER_MM, Point, Rect, Segment, grid, half};
use crate::num::math;
use crate::units::{Length, RealLength};

#[cfg(test)]
mod tests;

/// An edge of a slope from which posts keep away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setback {
    /// The edge.
    pub edge: Segment,
    /// Kind of the edge; `None` is the edge of a hole.
    pub kind: Option<EdgeKind>,
    /// Least distance of posts from it.
    pub least: Length,
    /// Deck flashings keep the distance, too.
    pub holds_flashing: bool,
}

/// Violation of a setback by a post.
#[derive(Clone, Copy, Debug)]
pub enum SetbackViolation {
    /// Its point on the deck lies too near: the distance.
    Post(Length),
    /// Its deck flashing does: the distance.
    Flashing(Length),
}

impl Setback {
    /// The violation of the setback by a post at a place, if any. At exactly the least distance there is none.
    pub fn broken_by(&self, at: Point, assembly: &Assembly) -> Option<SetbackViolation> {
        let near = |distance: &Distance| distance.is_below(grid(self.least));
        let of_post = Some(to_point(&self.edge, at)).filter(near).map(|d| SetbackViolation::Post(d.length()));
        of_post.or_else(|| {
            let flashing = &assembly.deck_flashing;
            let side = half(flashing.width);
            let (lower, upper) = (at.v - grid(flashing.down), at.v + grid(flashing.up));
            let rect = Rect::new(at.u - side, lower, at.u + side, upper);
            let distance = self.holds_flashing.then(|| to_rect(&self.edge, &rect));
            distance.filter(near).map(|d| SetbackViolation::Flashing(d.length()))
        })
    }
}

/// A distance in grid steps, as the exact quotient of its square, `top / over`.
#[derive(Clone, Copy)]
pub(super) struct Distance {
    top: I256,
    over: I256,
}

impl Distance {
    const ZERO: Distance = Distance { top: I256::ZERO, over: I256::ONE };

    fn is_below(self, limit: i64) -> bool {
        self.top < I256::from(limit) * I256::from(limit) * self.over
    }

    /// To the nearest nanometre, for showing.
    pub(super) fn length(self) -> Length {
        let steps = math::sqrt(self.top.as_f64() / self.over.as_f64());
        RealLength::from_mm(steps / GRID_PER_MM).nearest()
    }

    fn min(self, other: Distance) -> Distance {
        if other.top * self.over < self.top * other.over { other } else { self }
    }
}

pub(super) fn to_point(segment: &Segment, point: Point) -> Distance {
    let (along, from, to) = (way(segment.from, segment.to), way(segment.from, point), way(segment.to, point));
    let dot = |a: (i128, i128), b: (i128, i128)| a.0 * b.0 + a.1 * b.1;
    let (length, reached) = (dot(along, along), dot(along, from));
    if reached <= 0 {
        Distance { top: dot(from, from).into(), over: I256::ONE }
    } else if reached >= length {
        Distance { top: dot(to, to).into(), over: I256::ONE }
    } else {
        let cross = I256::from(segment.from.cross(segment.to, point));
        Distance { top: cross * cross, over: length.into() }
    }
}

fn way(from: Point, to: Point) -> (i128, i128) {
    (i128::from(to.u - from.u), i128::from(to.v - from.v))
}

pub(super) fn to_rect(segment: &Segment, rect: &Rect) -> Distance {
    if rect.meets_segment(segment) {
        return Distance::ZERO;
    }
    let ends = [segment.from, segment.to].map(|end| {
        let inside = Point::new(end.u.clamp(rect.left, rect.right), end.v.clamp(rect.lower, rect.upper));
        let (u, v) = way(end, inside);
        Distance { top: (u * u + v * v).into(), over: I256::ONE }
    });
    let corners = rect.corners().map(|corner| to_point(segment, corner));
    corners.into_iter().fold(ends[0].min(ends[1]), Distance::min)
}
