//! Posts to be set.
use std::sync::Arc;

use super::Assembly;
use crate::geometry::SlopePoint;

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
