//! What a screening says.
use super::{Distances, Member, Unscreened, Uplift};
use crate::geometry::Rect;
use crate::model::{PostId, ScreeningInput, Thread};
use crate::units::{Area, Force, Length, RealLength};

/// The screening of a job's lags against wind uplift: [`NOTE`](super::NOTE) says what it is and is not.
#[derive(Clone, Debug)]
pub struct Screening {
    /// Its inputs.
    pub inputs: Vec<ScreeningInput>,
    /// The posts screened, slope by slope in the job's order.
    pub posts: Vec<PostScreening>,
    /// The posts that are not.
    pub not_screened: Vec<NotScreened>,
}

/// One post's uplift and resistance.
#[derive(Clone, Debug, PartialEq)]
pub struct PostScreening {
    /// Its slope, by its place in the job's list.
    pub slope: usize,
    /// Which post of the slope.
    pub post: PostId,
    /// The array above it, by its place in the slope's list.
    pub array: usize,
    /// The part of the array that it carries.
    pub tributary: Rect,
    /// Area of that.
    pub tributary_area: Area,
    /// Uplift on the array, before the load combination.
    pub wind: Uplift,
    /// Uplift on the post, less the dead load, with the factors of the load combination; not below 0.
    pub uplift: Force,
    /// What the lags go into.
    pub member: Member,
    /// Of its wood.
    pub specific_gravity: f64,
    /// Lags.
    pub lags: u32,
    /// Diameter of one.
    pub diameter: Length,
    /// Thread of one in the wood, tip left out.
    pub thread: Thread,
    /// Reference withdrawal value, newtons for each millimetre of thread.
    pub withdrawal_n_per_mm: f64,
    /// What the lags hold together in withdrawal, factors counted.
    pub resistance: Force,
    /// Uplift over resistance; `None` where there is uplift and no thread in the wood.
    pub ratio: Option<f64>,
    /// Diameter of a pilot hole for the thread: least, greatest.
    pub pilot: [RealLength; 2],
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
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotScreened {
    /// Its slope, by its place in the job's list.
    pub slope: usize,
    /// Which post of the slope.
    pub post: PostId,
    /// Why not.
    pub reason: Unscreened,
}
