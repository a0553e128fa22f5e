//! Which of many rectangles meet, without trying every two.
use std::collections::BTreeSet;

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
