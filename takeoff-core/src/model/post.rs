//! Posts to be set.
use std::sync::Arc;

use super::Assembly;
use crate::geometry::SlopePoint;

/// A post by its place in its slope's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PostId(usize);

impl PostId {
    /// The post at a place of its slope's list, counted from 0.
    pub const fn new(place: usize) -> PostId {
        PostId(place)
    }

    /// Its place in its slope's list, counted from 0.
    pub const fn place(self) -> usize {
        self.0
    }
}

/// A post to be set.
#[derive(Clone, Debug)]
pub struct Post {
    pub(crate) name: String,
    pub(crate) assembly: Arc<Assembly>,
    /// Its point on the deck.
    pub(crate) at: SlopePoint,
    /// A layout leaves it where it is.
    pub(crate) fixed: bool,
    /// JSON Pointer to where the job gives it.
    pub(crate) path: String,
}
