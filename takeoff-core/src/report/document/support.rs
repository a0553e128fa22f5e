//! The wood under a post.
use schemars::JsonSchema;
use serde::Serialize;

use crate::deck;
use crate::model::PostId;
use crate::slope_takeoff;
use crate::units::Length;

/// The wood under a post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Support {
    /// The nearest rafter, counted from 1 on the left.
    pub rafter: u64,
    /// Post's point less the rafter's centre line.
    pub off_centre_mm: f64,
    /// Whether the lag lands within tolerance.
    pub on_rafter: bool,
    /// Whether blocking is put in.
    pub blocked: bool,
}

/// A blocking board between two rafters.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Blocking {
    /// The post it carries.
    pub post: String,
    /// Clear distance between the rafters, which is the board's length.
    pub length_mm: f64,
}

impl From<&deck::Support> for Support {
    fn from(support: &deck::Support) -> Support {
        Support {
            rafter: support.rafter as u64 + 1,
            off_centre_mm: support.off_centre.mm(),
            on_rafter: support.on_rafter,
            blocked: support.board.is_some(),
        }
    }
}

impl Blocking {
    /// The board under a post of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, post: PostId, length: Length) -> Blocking {
        Blocking { post: slope.post_name(post).to_owned(), length_mm: length.mm() }
    }
}
