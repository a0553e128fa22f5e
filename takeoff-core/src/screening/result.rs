//! What a screening says.
use schemars::JsonSchema;
use serde::Serialize;

use super::{Distances, Member, PressureFrom, Unscreened};
use crate::model::{ScreeningInput, ThreadLimit};

/// The screening of a job's lags against wind uplift.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Screening {
    /// What it is and what it is not.
    pub note: String,
    /// Its formulas with their sources.
    pub formulas: Vec<String>,
    /// Its inputs.
    pub inputs: Vec<ScreeningInput>,
    /// The posts screened, slope by slope in the job's order.
    pub posts: Vec<PostScreening>,
    /// The posts that are not.
    pub not_screened: Vec<NotScreened>,
    /// What no screening of this kind looks at.
    pub not_covered: Vec<String>,
}

/// One post's uplift and resistance.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PostScreening {
    /// Its slope.
    pub slope: String,
    /// Its name.
    pub post: String,
    /// The array above it.
    pub array: String,
    /// The part of the array that it carries: left, lower, right, upper.
    pub tributary_mm: [f64; 4],
    /// Area of that.
    pub tributary_mm2: f64,
    /// Pressure equalisation factor of the wind equation, if that is used.
    pub gamma_a: Option<f64>,
    /// Uplift on the array, before the load combination.
    pub pressure_pa: f64,
    /// Where it comes from.
    pub pressure_from: PressureFrom,
    /// Uplift on the post, less the dead load, with the factors of the load combination; not below 0.
    pub uplift_n: f64,
    /// What the lags go into.
    pub member: Member,
    /// Of its wood.
    pub specific_gravity: f64,
    /// Lags.
    pub lags: u64,
    /// Diameter of one.
    pub diameter_mm: f64,
    /// Thread of one in the wood, tip left out.
    pub thread_mm: f64,
    /// What the thread in the wood ends by.
    pub thread_limit: ThreadLimit,
    /// Reference withdrawal value, for each millimetre of thread.
    pub withdrawal_n_per_mm: f64,
    /// What the lags hold together in withdrawal, factors counted.
    pub resistance_n: f64,
    /// Uplift over resistance; `None` where there is uplift and no thread in the wood.
    pub ratio: Option<f64>,
    /// Diameter of a pilot hole for the thread: least, greatest.
    pub pilot_mm: [f64; 2],
    /// To edge and end of the wood, and from lag to lag.
    pub distances: Distances,
}

impl PostScreening {
    /// Whether the uplift is more than the lags hold.
    pub fn exceeds(&self) -> bool {
        self.ratio.is_none_or(|ratio| ratio > 1.0)
    }
}

/// A post that is not screened.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct NotScreened {
    /// Its slope.
    pub slope: String,
    /// Its name.
    pub post: String,
    /// Why not.
    pub reason: Unscreened,
}
