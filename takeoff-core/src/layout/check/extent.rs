//! The rectangle that an array covers.
use crate::geometry::{Point, Polygon, Rect, grid};
use crate::model::{Array, Post};
use crate::units::Length;

/// The rectangle round the modules of an array, the gaps between them included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Extent {
    pub(super) left: Length,
    pub(super) lower: Length,
    pub(super) right: Length,
    pub(super) upper: Length,
}

impl Extent {
    /// `n` modules have `n − 1` gaps between them.
    pub(super) fn new(array: &Array) -> Extent {
        let side = |modules: u32, module: Length, gap: Length| {
            let (modules, gaps) = (i64::from(modules), i64::from(modules) - 1);
            let all = modules.saturating_mul(module.nm()).saturating_add(gaps.saturating_mul(gap.nm()));
            Length::from_nm(all).min(Length::LIMIT)
        };
        Extent {
            left: array.at.u,
            lower: array.at.v,
            right: array.at.u + side(array.columns, array.module_width, array.column_gap),
            upper: array.at.v + side(array.rows, array.module_height, array.row_gap),
        }
    }

    /// Whether a post is below the array, or below its edge.
    pub(super) fn covers(&self, post: &Post) -> bool {
        self.left <= post.at.u
            && post.at.u <= self.right
            && self.lower <= post.at.v
            && post.at.v <= self.upper
    }

    /// Whether two arrays overlap; arrays that touch do not.
    pub(super) fn overlaps(&self, other: &Extent) -> bool {
        let along = self.right.min(other.right) - self.left.max(other.left);
        let up = self.upper.min(other.upper) - self.lower.max(other.lower);
        along > Length::ZERO && up > Length::ZERO
    }

    /// Whether it is wholly on a slope and over no hole: no edge passes through its interior, and a place in the interior
    /// is on the slope.
    pub(super) fn is_on(&self, outline: &Polygon) -> bool {
        let rect = Rect::new(grid(self.left), grid(self.lower), grid(self.right), grid(self.upper));
        let [lower_left, .., upper_left] = rect.corners();
        let inside = Point::new(lower_left.u + 1, upper_left.v - 1);
        !outline.edges().any(|edge| rect.meets_segment(&edge)) && outline.contains(inside)
    }
}
