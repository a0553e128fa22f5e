//! Rectangles that are nearer than a gap, merged until none are.
use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree};
use smallvec::SmallVec;

use crate::geometry::{Point, Rect};

/// The rectangles left when two of them nearer than a gap are one leftover: usually one.
pub(crate) type FewRects = SmallVec<[Rect; 1]>;

/// Rectangles merged as they are added: two that are nearer than the gap in both `u` and `v` become their bounding
/// rectangle, and so on, until no two are nearer.
///
/// # Why does the order not matter?
///
/// Call a partition of the rectangles *settled* when no two of its parts have bounding rectangles nearer than the gap.
/// Of two settled partitions the common refinement is settled too: two of its parts differ in one of the two, where
/// their bounding rectangles lie in larger ones that are not nearer. So there is one finest settled partition. Every merge
/// joins rectangles that it holds together (their bounding rectangles lie inside those of its parts, which would be
/// nearer otherwise), and merging ends only at a settled partition: at that one, whatever the order.
///
/// # Cost
///
/// Each look-up takes at least one rectangle off the tree or is the last for the one being added: `n log n` for `n`.
#[derive(Clone, Debug)]
pub(crate) struct Merged {
    gap: i64,
    rects: RTree<GeomWithData<Rectangle<[f64; 2]>, Rect>>,
}

impl Merged {
    /// Merges rectangles nearer than `gap`.
    pub(crate) fn new(rects: impl IntoIterator<Item = Rect>, gap: i64) -> Merged {
        let mut merged = Merged { gap, rects: RTree::new() };
        merged.extend(rects);
        merged
    }

    /// What is left, ascending.
    pub(crate) fn rects(&self) -> FewRects {
        let mut rects: FewRects = self.rects.iter().map(|held| held.data).collect();
        rects.sort_unstable();
        rects
    }

    /// The one that holds a point inside one of the rectangles.
    pub(crate) fn around(&self, point: Point) -> Option<Rect> {
        let at = AABB::from_point([point.u as f64, point.v as f64]);
        self.rects.locate_in_envelope_intersecting(&at).map(|held| held.data).next()
    }

    fn extend(&mut self, rects: impl IntoIterator<Item = Rect>) {
        rects.into_iter().for_each(|rect| self.add(rect));
    }

    fn add(&mut self, mut rect: Rect) {
        loop {
            // Sides are whole: nearer than the gap is to overlap or touch when grown by one step less.
            let near = envelope(&rect.grown(self.gap - 1));
            let joined = self.rects.drain_in_envelope_intersecting(near).map(|held| held.data);
            match joined.reduce(|all, held| all.union(&held)) {
                Some(joined) => rect = rect.union(&joined),
                None => break,
            }
        }
        self.rects.insert(GeomWithData::new(Rectangle::from_aabb(envelope(&rect)), rect));
    }
}

/// Of each rectangle, what is left when all the others are merged.
///
/// By halves: the rectangles outside a range are merged already, so each half of the range needs the other half
/// added. A rectangle is added once on each of the `log n` levels.
pub(crate) fn merged_without_each(rects: &[Rect], gap: i64) -> Vec<FewRects> {
    // Neighbours leave together, so that what stays falls into few.
    let mut order: Vec<usize> = (0..rects.len()).collect();
    order.sort_unstable_by_key(|&i| rects[i]);
    let mut without = vec![FewRects::new(); rects.len()];
    let mut waiting = vec![(Merged::new([], gap), &order[..])];
    while let Some((outside, range)) = waiting.pop() {
        match range {
            [] => {}
            [only] => without[*only] = outside.rects(),
            _ => {
                let (low, high) = range.split_at(range.len() / 2);
                for (half, other) in [(low, high), (high, low)] {
                    let mut outside = outside.clone();
                    outside.extend(other.iter().map(|&i| rects[i]));
                    waiting.push((outside, half));
                }
            }
        }
    }
    without
}

/// Grid steps are exact as `f64` within the limits (±4·10¹³ is below 2⁵³).
fn envelope(rect: &Rect) -> AABB<[f64; 2]> {
    AABB::from_corners([rect.left as f64, rect.lower as f64], [rect.right as f64, rect.upper as f64])
}
