//! Posts moved, added and gone.
use schemars::JsonSchema;
use serde::Serialize;

use super::pairs::pairs;
use crate::deck::DeckMethod;
use crate::relocation::Situation;
use crate::slope_takeoff::{PostTakeoff, SlopeTakeoff};

/// A post that changed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PostChange {
    /// Its slope.
    pub slope: String,
    /// Its name.
    pub post: String,
    /// How far it moved, along the eave and up the slope; `None` where it is not in both.
    pub moved_mm: Option<[f64; 2]>,
    /// As bid; `None` where it was added.
    pub bid: Option<PostPlace>,
    /// As built; `None` where it is gone.
    pub as_built: Option<PostPlace>,
}

/// A post's place and what it comes to there.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PostPlace {
    /// Along the eave.
    pub u_mm: f64,
    /// Up the slope.
    pub v_mm: f64,
    /// Its assembly.
    pub assembly: String,
    /// What it meets.
    pub situation: Situation,
    /// Whether a tile is severed.
    pub severed: bool,
    /// How its deck flashing is dried in.
    pub method: DeckMethod,
}

impl PostPlace {
    fn of(post: &PostTakeoff) -> PostPlace {
        PostPlace {
            u_mm: post.at.u.mm(),
            v_mm: post.at.v.mm(),
            assembly: post.assembly.name.clone(),
            situation: post.situation,
            severed: post.severed,
            method: post.deck.method.kind(),
        }
    }
}

/// The posts that are not the same in both.
pub(super) fn changes(bid: &[SlopeTakeoff], as_built: &[SlopeTakeoff]) -> Vec<PostChange> {
    let changed = pairs(by_name(bid), by_name(as_built)).into_iter().filter_map(|(name, bid, as_built)| {
        let (slope, post) = name;
        let (bid, as_built) = (bid.map(PostPlace::of), as_built.map(PostPlace::of));
        if bid == as_built {
            return None;
        }
        let both = bid.as_ref().zip(as_built.as_ref());
        let moved_mm =
            both.map(|(bid, built)| [whole_nm(built.u_mm - bid.u_mm), whole_nm(built.v_mm - bid.v_mm)]);
        Some(PostChange { slope: slope.to_owned(), post: post.to_owned(), moved_mm, bid, as_built })
    });
    changed.collect()
}

/// Posts by slope and name.
fn by_name(slopes: &[SlopeTakeoff]) -> impl Iterator<Item = ((&str, &str), &PostTakeoff)> + Clone {
    slopes
        .iter()
        .flat_map(|slope| slope.posts.iter().map(|post| ((slope.name.as_str(), post.name.as_str()), post)))
}

/// A difference of lengths in whole nanometres, as each of them is.
fn whole_nm(mm: f64) -> f64 {
    (mm * 1e6).round() / 1e6
}
