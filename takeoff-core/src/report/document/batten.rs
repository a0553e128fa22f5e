//! A piece of batten cut out and reset.
use schemars::JsonSchema;
use serde::Serialize;

use super::names::post_names;
use crate::deck::{self, NAILS_A_PIECE};
use crate::geometry::to_mm;
use crate::slope_takeoff;

/// A piece of batten cut out and reset.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BattenPiece {
    /// The course that hangs on it.
    pub course: u64,
    /// Left end.
    pub from_mm: f64,
    /// Right end.
    pub to_mm: f64,
    /// Lower edge.
    pub lower_mm: f64,
    /// Upper edge.
    pub upper_mm: f64,
    /// Nails, two an end.
    pub nails: u64,
    /// The posts it makes room for.
    pub posts: Vec<String>,
}

impl BattenPiece {
    /// A piece of batten of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, piece: &deck::BattenPiece) -> BattenPiece {
        BattenPiece {
            course: u64::from(piece.course) + 1,
            from_mm: to_mm(piece.bounds.left),
            to_mm: to_mm(piece.bounds.right),
            lower_mm: to_mm(piece.bounds.lower),
            upper_mm: to_mm(piece.bounds.upper),
            nails: NAILS_A_PIECE,
            posts: post_names(slope, &piece.posts),
        }
    }
}
