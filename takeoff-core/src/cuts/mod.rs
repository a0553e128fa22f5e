//! What an opening does to the tiles it meets: the heart of the takeoff.
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
