//! Which openings lie near a place.
use std::cmp::Reverse;
use std::collections::BinaryHeap;

use rstar::primitives::GeomWithData;
use rstar::{AABB, Envelope, RTree, RTreeObject};

use crate::geometry::{Ellipse, Rect};

use super::Axis;

/// The bounding rectangles of a slope's openings, to be looked up by place.
///
/// A rectangle is a point of four coordinates, its sides, so that every question about sides is a box: the tree parts even
/// openings that lie on each other, by whatever sides they differ in.
pub struct Neighbours {
    tree: RTree<GeomWithData<Sides, usize>>,
}

/// Left, lower, right and upper side. Grid steps are exact as `f64` within the limits (±4·10¹³ is below 2⁵³).
type Sides = [f64; 4];

impl Neighbours {
    /// Over the openings of a slope.
    pub fn of(openings: &[Ellipse]) -> Neighbours {
        let sides = openings.iter().enumerate().map(|(post, opening)| {
            let Rect { left, lower, right, upper } = opening.bounds();
            GeomWithData::new([left, lower, right, upper].map(|side| side as f64), post)
        });
        Neighbours { tree: RTree::bulk_load(sides.collect()) }
    }

    /// Whether the opening of a post other than `post` is nearer than `web` to a rectangle, in both `u` and `v`.
    pub fn any_near(&self, rect: &Rect, web: i64, post: usize) -> bool {
        let near = meeting(&rect.grown(web));
        self.tree.locate_in_envelope(&near).any(|found| found.data != post)
    }

    /// How far a rectangle can go one way before it is as near as `web` to the opening of a post other than `post` that it
    /// is now farther from; `None` where there is none on its way.
    ///
    /// Looks at the part of the tree that begins nearest first.
    pub(super) fn way_to_next(
        &self,
        rect: &Rect,
        axis: Axis,
        sign: i64,
        web: i64,
        post: usize,
    ) -> Option<i64> {
        // The side that the rectangle comes to, and its own that goes ahead.
        let (side, ahead) = match (axis, sign > 0) {
            (Axis::U, true) => (0, rect.right),
            (Axis::V, true) => (1, rect.upper),
            (Axis::U, false) => (2, rect.left),
            (Axis::V, false) => (3, rect.lower),
        };
        let (first, beside) = (ahead + sign * web, meeting(&rect.grown(web)));
        let (mut low, mut high) = (beside.lower(), beside.upper());
        // Across the way as near as before; along it beyond the web.
        let (start, opposite) = (side, (side + 2) % 4);
        (low[opposite], high[opposite]) = (f64::NEG_INFINITY, f64::INFINITY);
        (low[start], high[start]) =
            if sign > 0 { (first as f64, f64::INFINITY) } else { (f64::NEG_INFINITY, first as f64) };
        let way = AABB::from_corners(low, high);
        let gap = |envelope: &AABB<Sides>| {
            let nearest = if sign > 0 { envelope.lower()[side] } else { envelope.upper()[side] };
            (nearest as i64).saturating_sub(first).saturating_mul(sign).max(0)
        };

        let root = self.tree.root();
        let mut parents = vec![root];
        let mut waiting = BinaryHeap::from([Reverse((gap(&root.envelope()), 0))]);
        let mut least: Option<i64> = None;
        while let Some(Reverse((nearest, parent))) = waiting.pop() {
            if least.is_some_and(|least| least <= nearest) {
                break;
            }
            for child in parents[parent].children() {
                let envelope = child.envelope();
                match child {
                    _ if !way.intersects(&envelope) => {}
                    rstar::RTreeNode::Leaf(found) if found.data == post => {}
                    rstar::RTreeNode::Leaf(_) => {
                        least = Some(least.map_or(gap(&envelope), |least| least.min(gap(&envelope))));
                    }
                    rstar::RTreeNode::Parent(inner) => {
                        waiting.push(Reverse((gap(&envelope), parents.len())));
                        parents.push(inner);
                    }
                }
            }
        }
        least
    }
}

/// The sides of the rectangles whose interiors meet one: sides are whole, so that the box is closed.
fn meeting(rect: &Rect) -> AABB<Sides> {
    let inside = [rect.left + 1, rect.lower + 1, rect.right - 1, rect.upper - 1].map(|side| side as f64);
    let [left, lower, right, upper] = inside;
    let (least, greatest) = (f64::NEG_INFINITY, f64::INFINITY);
    AABB::from_corners([least, least, left, lower], [right, upper, greatest, greatest])
}
