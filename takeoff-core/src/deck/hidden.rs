//! Tiles that nobody will see once the arrays stand.
use super::Taken;
use crate::model::Array;
use crate::roof::{Part, Site};

/// How many whole tiles of a part the arrays of a slope hide, nothing else being done to them: spare tiles that the
/// crew can take from there.
///
/// # Rule
///
/// The tile is whole (the field's edge does not cut it), its visible face lies within the rectangle of one array, and
/// it is neither cut nor taken up nor loosened. Tiles set in mortar, foam or adhesive don't come up whole: none.
///
/// # Example
///
/// Tiles 12 in from joint to joint, exposed 13 1/4 in: an array 50 in wide and 30 in tall with its lower left corner on
/// the corner of a face hides 4 by 2 of them in straight bond.
pub fn hidden(site: &Site, taken: &[Taken], part: Part) -> u64 {
    if site.slope.tile.held.is_set() {
        return 0;
    }
    let untouched =
        |tile| taken.binary_search_by_key(&(tile, None), |taken| (taken.tile, taken.piece)).is_err();
    let below = |array: &Array| {
        let bounds = array.bounds();
        let tiles = site.grid.over(bounds).filter(|(tile, footprint)| {
            let face = site.grid.face(*tile);
            tile.part == part
                && !face.is_empty()
                && bounds.intersection(&face) == face
                && site.field.covers(footprint)
                && untouched(*tile)
        });
        tiles.count() as u64
    };
    site.slope.arrays.iter().map(below).sum()
}
