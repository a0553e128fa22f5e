//! Posts moved, added and gone.
use super::pairs::pairs;
use crate::deck::DeckMethod;
use crate::geometry::SlopePoint;
use crate::relocation::Situation;
use crate::slope_takeoff::{PostTakeoff, SlopeTakeoff};
use crate::units::Length;

/// A post that changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PostChange {
    /// Its slope.
    pub slope: String,
    /// Its name.
    pub post: String,
    /// As bid; `None` where it was added.
    pub bid: Option<PostPlace>,
    /// As built; `None` where it is gone.
    pub as_built: Option<PostPlace>,
}

impl PostChange {
    /// How far it moved, along the eave and up the slope; `None` where it is not in both.
    pub fn moved(&self) -> Option<[Length; 2]> {
        let (bid, built) = (self.bid.as_ref()?.at, self.as_built.as_ref()?.at);
        Some([built.u - bid.u, built.v - bid.v])
    }
}

/// A post's place and what it comes to there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PostPlace {
    /// Its point on the deck.
    pub at: SlopePoint,
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
    fn new(post: &PostTakeoff) -> PostPlace {
        PostPlace {
            at: post.at,
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
        let (bid, as_built) = (bid.map(PostPlace::new), as_built.map(PostPlace::new));
        if bid == as_built {
            return None;
        }
        Some(PostChange { slope: slope.to_owned(), post: post.to_owned(), bid, as_built })
    });
    changed.collect()
}

/// Posts by slope and name.
fn by_name(slopes: &[SlopeTakeoff]) -> impl Iterator<Item = ((&str, &str), &PostTakeoff)> + Clone {
    slopes
        .iter()
        .flat_map(|slope| slope.posts.iter().map(|post| ((slope.name.as_str(), post.name.as_str()), post)))
}
