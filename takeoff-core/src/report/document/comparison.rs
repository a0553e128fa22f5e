//! What changed between a takeoff as bid and one as built.
use schemars::JsonSchema;
use serde::Serialize;

use crate::compare::{self, CostChange, CountChange, MaterialChange};
use crate::deck::DeckMethod;
use crate::model::Display;
use crate::relocation::Situation;
use crate::units::Length;

/// What changed between a takeoff as bid and one as built.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Comparison {
    /// `tilepost-comparison/1`.
    pub format: String,
    /// The job's name as bid.
    pub bid: String,
    /// The job's name as built.
    pub as_built: String,
    /// Which units reports show: those of the bid.
    pub display: Display,
    /// Whether anything below changed.
    pub changed: bool,
    /// Totals that changed.
    pub counts: Vec<CountChange>,
    /// Posts that moved, came or went, or are worked otherwise.
    pub posts: Vec<PostChange>,
    /// Material lines added, gone or changed.
    pub materials: Vec<MaterialChange>,
    /// Totals of the bid that changed, where both have a bid in one currency.
    pub costs: Vec<CostChange>,
}

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

impl From<&compare::Comparison> for Comparison {
    fn from(comparison: &compare::Comparison) -> Comparison {
        Comparison {
            format: "tilepost-comparison/1".to_owned(),
            bid: comparison.bid.clone(),
            as_built: comparison.as_built.clone(),
            display: comparison.display,
            changed: comparison.changed(),
            counts: comparison.counts.clone(),
            posts: comparison.posts.iter().map(PostChange::from).collect(),
            materials: comparison.materials.clone(),
            costs: comparison.costs.clone(),
        }
    }
}

impl From<&compare::PostChange> for PostChange {
    fn from(change: &compare::PostChange) -> PostChange {
        PostChange {
            slope: change.slope.clone(),
            post: change.post.clone(),
            moved_mm: change.moved().map(|moved| moved.map(Length::mm)),
            bid: change.bid.as_ref().map(PostPlace::from),
            as_built: change.as_built.as_ref().map(PostPlace::from),
        }
    }
}

impl From<&compare::PostPlace> for PostPlace {
    fn from(place: &compare::PostPlace) -> PostPlace {
        PostPlace {
            u_mm: place.at.u.mm(),
            v_mm: place.at.v.mm(),
            assembly: place.assembly.clone(),
            situation: place.situation,
            severed: place.severed,
            method: place.method,
        }
    }
}
