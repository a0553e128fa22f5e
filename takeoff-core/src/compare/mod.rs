//! Changes between two takeoffs of a job, as bid and as built.
//!
//! Materials are compared by identity, posts by slope and name. What is the same in both is left out, so that an empty
//! comparison means that nothing changed.
mod costs;
mod counts;
mod materials;
mod pairs;
mod posts;

pub use costs::CostChange;
pub use counts::CountChange;
pub use materials::{Amount, MaterialChange};
pub use posts::{PostChange, PostPlace};

use crate::model::Display;
use crate::takeoff::Takeoff;

/// What changed between a takeoff as bid and one as built.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// The job's name as bid.
    pub bid: String,
    /// The job's name as built.
    pub as_built: String,
    /// Which units reports show: those of the bid.
    pub display: Display,
    /// Totals that changed.
    pub counts: Vec<CountChange>,
    /// Posts that moved, came or went, or are worked otherwise.
    pub posts: Vec<PostChange>,
    /// Material lines added, gone or changed.
    pub materials: Vec<MaterialChange>,
    /// Totals of the bid that changed, where both have a bid in one currency.
    pub costs: Vec<CostChange>,
}

impl Comparison {
    /// Whether anything changed.
    pub fn changed(&self) -> bool {
        let Comparison { counts, posts, materials, costs, .. } = self;
        !(counts.is_empty() && posts.is_empty() && materials.is_empty() && costs.is_empty())
    }
}

/// Compares a takeoff as bid with one as built.
///
/// # Example
///
/// ```
/// use takeoff_core::{api::read_and_take_off, compare::compare, job::{EXAMPLE, Files}};
/// let bid = read_and_take_off(EXAMPLE, &Files::new()).unwrap();
/// assert!(!compare(&bid, &bid).changed());
/// ```
pub fn compare(bid: &Takeoff, as_built: &Takeoff) -> Comparison {
    let counts = counts::changes(&bid.counts, &as_built.counts);
    let posts = posts::changes(&bid.slopes, &as_built.slopes);
    let bids = costs::bids(bid, as_built);
    let materials = materials::changes([&bid.materials, &as_built.materials], bids);
    let costs = bids.map(costs::changes).unwrap_or_default();
    Comparison {
        bid: bid.job.clone(),
        as_built: as_built.job.clone(),
        display: bid.display,
        counts,
        posts,
        materials,
        costs,
    }
}
