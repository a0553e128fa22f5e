//! What an opening does to the tiles it meets: the heart of the takeoff.
//!
//! # What does a corner cut of a piece take that is not convex?
//!
//! All that lies in its cone, behind a gap too: a piece that hangs by nothing comes away.
//!
//! # Why no clipping library for "is it cut"?
//!
//! Boolean operations on polygons round to a grid of their own; an overlap of a tenth of a micrometre on a long roof
//! vanishes. Here every decision is made in integers, and only the vertices of clipped footprints are rounded, once.
mod breach;
mod judge;
mod kind;
mod merged;
mod opening;
mod removed;
mod shape;
mod slope_cut;
mod sweep;
#[cfg(test)]
mod tests;

pub use breach::Breach;
pub use judge::{Footprint, Judged, cut, each_met, judge, judge_together};
pub use kind::{CutKind, TileSide};
pub(crate) use merged::{FewRects, Merged, merged_without_each};
pub use opening::{Opening, opening_of, openings_of};
pub use removed::{Removed, removed};
pub use shape::Shape;
pub use slope_cut::{SlopeCut, cuts_of, cuts_of_each, each_cut};
