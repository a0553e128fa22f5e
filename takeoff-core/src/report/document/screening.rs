//! The screening of lags against wind uplift.
use schemars::JsonSchema;
use serde::Serialize;

use crate::model::{ScreeningInput, ThreadLimit};
use crate::screening::{self, Member, PressureFrom, Unscreened};
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::RealLength;
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

/// The distances of a post's lags.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Distances {
    /// From the outermost lag to the edge of the wood; `None` where the spacing of the lags is not given.
    pub edge: Option<Distance>,
    /// From the outermost lag to the end of the wood, along the grain; `None` where the spacing is not given.
    pub end: Option<Distance>,
    /// From lag to lag; `None` for a single lag, or where the spacing is not given.
    pub spacing: Option<Distance>,
}

/// A distance there is, and the one that is asked.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Distance {
    /// What there is; below 0 where a lag misses the wood.
    pub has_mm: f64,
    /// What is asked.
    pub asked_mm: f64,
}

impl Screening {
    /// The screening of a job with these slopes.
    pub(super) fn new(slopes: &[SlopeTakeoff], screening: &screening::Screening) -> Screening {
        let texts = |texts: &[&str]| texts.iter().map(|&text| text.to_owned()).collect();
        Screening {
            note: screening::NOTE.to_owned(),
            formulas: texts(&screening::FORMULAS),
            inputs: screening.inputs.clone(),
            posts: screening.posts.iter().map(|post| PostScreening::new(&slopes[post.slope], post)).collect(),
            not_screened: screening
                .not_screened
                .iter()
                .map(|of| NotScreened::new(&slopes[of.slope], of))
                .collect(),
            not_covered: texts(&screening::NOT_COVERED),
        }
    }
}

impl PostScreening {
    fn new(slope: &SlopeTakeoff, of: &screening::PostScreening) -> PostScreening {
        PostScreening {
            slope: slope.name.clone(),
            post: slope.post_name(of.post).to_owned(),
            array: slope.arrays[of.array].array.name.clone(),
            tributary_mm: of.tributary.mm(),
            tributary_mm2: of.tributary_area.mm2(),
            gamma_a: of.wind.gamma_a,
            pressure_pa: of.wind.pressure.pa(),
            pressure_from: of.wind.from,
            uplift_n: of.uplift.n(),
            member: of.member,
            specific_gravity: of.specific_gravity,
            lags: of.lags.into(),
            diameter_mm: of.diameter.mm(),
            thread_mm: of.thread.length.mm(),
            thread_limit: of.thread.limit,
            withdrawal_n_per_mm: of.withdrawal_n_per_mm,
            resistance_n: of.resistance.n(),
            ratio: of.ratio,
            pilot_mm: of.pilot.map(RealLength::mm),
            distances: Distances::from(&of.distances),
        }
    }

    /// Whether the uplift is more than the lags hold.
    pub fn exceeds(&self) -> bool {
        self.ratio.is_none_or(|ratio| ratio > 1.0)
    }
}

impl NotScreened {
    fn new(slope: &SlopeTakeoff, of: &screening::NotScreened) -> NotScreened {
        NotScreened {
            slope: slope.name.clone(),
            post: slope.post_name(of.post).to_owned(),
            reason: of.reason,
        }
    }
}

impl From<&screening::Distances> for Distances {
    fn from(distances: &screening::Distances) -> Distances {
        let distance = |of: screening::Distance| Distance { has_mm: of.has.mm(), asked_mm: of.asked.mm() };
        Distances {
            edge: distances.edge.map(distance),
            end: distances.end.map(distance),
            spacing: distances.spacing.map(distance),
        }
    }
}
