//! Which of many rectangles meet, without trying every two.
use std::collections::BTreeSet;

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, Envelope, RTree, SelectionFunction};

use crate::geometry::Rect;

/// Calls `found` once with the indices of every two rectangles whose interiors meet, the lower index first.
///
/// A sweep from left to right: the rectangles that reach past the current left side are kept by their lower side,
/// and only those low enough and not too low to meet are looked at. For rectangles of about one height the cost
/// is that of sorting, plus the pairs.
pub fn each_meeting_pair(rects: &[Rect], mut found: impl FnMut(usize, usize)) {
    let mut order: Vec<usize> = (0..rects.len()).collect();
    order.sort_unstable_by_key(|&i| (rects[i].left, i));
    let tallest = rects.iter().map(|rect| rect.upper - rect.lower).max().unwrap_or(0);
    let mut open: BTreeSet<(i64, usize)> = BTreeSet::new();
    let mut passed = Vec::new();
    for i in order {
        let rect = &rects[i];
        for &(lower, j) in open.range((rect.lower - tallest, 0)..(rect.upper, 0)) {
            if rects[j].right <= rect.left {
                passed.push((lower, j));
            } else if rects[j].meets(rect) {
                found(i.min(j), i.max(j));
            }
        }
        for key in passed.drain(..) {
            open.remove(&key);
        }
        open.insert((rect.lower, i));
    }
}

/// Of each rectangle, the first other whose interior meets its own, and how many others do; `None` where none does.
///
/// The cost is that of sorting, however many meet.
pub(super) fn first_and_count(rects: &[Rect]) -> Vec<Option<(usize, usize)>> {
    let mut first: Vec<Option<usize>> = vec![None; rects.len()];
    let boxes = rects.iter().map(|rect| Rectangle::from_aabb(box_of(rect)));
    let mut without_first =
        RTree::bulk_load(boxes.zip(0..).map(|(held, i)| GeomWithData::new(held, i)).collect());
    for (i, rect) in rects.iter().enumerate() {
        let meeting = MeetingOthers { own: i, rect, rects };
        without_first.drain_with_selection_function(meeting).for_each(|found| first[found.data] = Some(i));
    }
    let counts = counts(rects);
    first.into_iter().zip(counts).map(|(first, count)| Some((first?, count))).collect()
}

/// Selects the rectangles that meet one, itself aside.
struct MeetingOthers<'a> {
    own: usize,
    rect: &'a Rect,
    rects: &'a [Rect],
}

impl SelectionFunction<GeomWithData<Rectangle<[f64; 2]>, usize>> for MeetingOthers<'_> {
    fn should_unpack_parent(&self, envelope: &AABB<[f64; 2]>) -> bool {
        envelope.intersects(&box_of(self.rect))
    }

    fn should_unpack_leaf(&self, leaf: &GeomWithData<Rectangle<[f64; 2]>, usize>) -> bool {
        leaf.data != self.own && self.rects[leaf.data].meets(self.rect)
    }
}

/// Of each rectangle, how many others meet it: those that begin before it ends, both ways, less those that end before
/// it begins.
fn counts(rects: &[Rect]) -> Vec<usize> {
    type Side = fn(&Rect) -> i64;
    let [left, right, lower, upper]: [Side; 4] = [|r| r.left, |r| r.right, |r| r.lower, |r| r.upper];
    let below = |u: Side, most_u: fn(&Rect) -> i64, v: Side, most_v: fn(&Rect) -> i64| {
        let points: Vec<(i64, i64)> = rects.iter().map(|rect| (u(rect), v(rect))).collect();
        let most: Vec<(i64, i64)> = rects.iter().map(|rect| (most_u(rect), most_v(rect))).collect();
        count_below(&points, &most)
    };
    // Sides are whole: to begin before an end is to begin a step before it at the latest.
    let [before_right, before_upper]: [Side; 2] = [|r| r.right - 1, |r| r.upper - 1];
    let begun = below(left, before_right, lower, before_upper);
    let passed_u = below(right, left, lower, before_upper);
    let passed_v = below(left, before_right, upper, lower);
    let passed_both = below(right, left, upper, lower);
    // Each meets itself.
    (0..rects.len())
        .map(|i| (begun[i] + passed_both[i]).saturating_sub(passed_u[i] + passed_v[i] + 1))
        .collect()
}

/// Of each pair `(u, v)` of `most`, how many points have neither coordinate above it: a sweep along `u` over a tree of sums by
/// the rank of `v` (P. Fenwick, "A new data structure for cumulative frequency tables", 1994).
fn count_below(points: &[(i64, i64)], most: &[(i64, i64)]) -> Vec<usize> {
    let mut points = points.to_vec();
    points.sort_unstable();
    let mut heights: Vec<i64> = points.iter().map(|point| point.1).collect();
    heights.sort_unstable();
    let mut order: Vec<usize> = (0..most.len()).collect();
    order.sort_unstable_by_key(|&i| most[i].0);
    let mut sums = vec![0; heights.len() + 1];
    let mut counts = vec![0; most.len()];
    let mut waiting = points.into_iter().peekable();
    for i in order {
        let (most_u, most_v) = most[i];
        while let Some((_, v)) = waiting.next_if(|point| point.0 <= most_u) {
            let mut rank = heights.partition_point(|&height| height < v) + 1;
            while rank < sums.len() {
                sums[rank] += 1;
                rank += rank & rank.wrapping_neg();
            }
        }
        let mut rank = heights.partition_point(|&height| height <= most_v);
        while rank > 0 {
            counts[i] += sums[rank];
            rank &= rank - 1;
        }
    }
    counts
}

/// Grid steps are exact as `f64` within the limits (±4·10¹³ is below 2⁵³).
fn box_of(rect: &Rect) -> AABB<[f64; 2]> {
    AABB::from_corners([rect.left as f64, rect.lower as f64], [rect.right as f64, rect.upper as f64])
}
