//! The lag screws of a post, and how much of their thread is in the wood.
use schemars::JsonSchema;
use serde::Serialize;

use crate::units::Length;

/// The lag screws of one post.
#[derive(Clone, Debug, PartialEq)]
pub struct Lags {
    /// How many.
    pub(crate) count: u32,
    /// Of the shank.
    pub(crate) diameter: Length,
    /// From under the head to the point.
    pub(crate) length: Length,
    /// Thread, the tapered tip included.
    pub(crate) thread_length: Length,
    /// The tapered tip.
    pub(crate) tip: Length,
    /// What lies between the heads and the deck.
    pub(crate) shim: Length,
    /// From the outermost to the outermost across the rafter.
    pub(crate) across: Length,
    /// From lag to lag, the nearest two.
    pub(crate) spacing: Option<Length>,
}

/// What the thread in the wood ends by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ThreadLimit {
    /// All of the thread is in the wood; the shank reaches into it too.
    ThreadLength,
    /// A part of the thread is still in the sheathing or above it: the lag is what is too short.
    LagLength,
    /// The lag comes out of the wood below.
    WoodDepth,
}

/// Thread in the wood of one lag.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thread {
    /// How long it is, without the tapered tip.
    pub length: Length,
    /// What it ends by.
    pub limit: ThreadLimit,
}

impl Lags {
    /// The thread of one lag that is in wood which begins so far below the lag's head, and is so deep.
    ///
    /// # Rule
    ///
    /// Thread begins where the shank ends, `S = L − T` below the head, and ends at the tapered tip, `L − E`: of
    /// this, what is in the wood. So it is never more than `T − E`, nor than what is left of the lag after shim,
    /// sheathing, shank and tip.
    ///
    /// # Example
    ///
    /// A lag of 3 in with 2 in of thread and a tip of 3/16 in, through sheathing of 15/32 in: 3 − 15/32 − 3/16 =
    /// 2.344 in of it is in the wood, but thread are only 2 − 3/16 = 1 13/16 in.
    pub fn thread_in(&self, above: Length, depth: Option<Length>) -> Thread {
        let shank = self.length - self.thread_length;
        let begins = (shank - above).max(Length::ZERO);
        let tip = self.length - self.tip - above;
        let (ends, limit) = match depth {
            Some(depth) if depth < tip => (depth, ThreadLimit::WoodDepth),
            _ if shank < above => (tip, ThreadLimit::LagLength),
            _ => (tip, ThreadLimit::ThreadLength),
        };
        Thread { length: (ends - begins).max(Length::ZERO), limit }
    }

    /// From the first lag to the last along the rafter, were they all in one line; unknown without their spacing.
    pub fn reach(&self) -> Option<Length> {
        let steps = i64::from(self.count) - 1;
        if steps == 0 { Some(Length::ZERO) } else { self.spacing?.ratio(steps, 1) }
    }
}

/// Thread of a lag screw of this length, tip included, where nobody measured it: `min(L/2 + 1/2 in, 6 in)`, and not
/// more than the lag.
///
/// # Source
///
/// NDS 2018, appendix L, table L2 (after ASME B18.2.1).
///
/// # Example
///
/// ```
/// use takeoff_core::model::usual_thread;
/// use takeoff_core::units::Length;
/// let inches = |text| Length::parse(text).unwrap();
/// assert_eq!(usual_thread(inches("4 in")), inches("2 1/2 in")); // 4/2 + 1/2
/// assert_eq!(usual_thread(inches("12 in")), inches("6 in"));
/// ```
pub fn usual_thread(length: Length) -> Length {
    let half_inch = Length::from_nm(Length::INCH.nm() / 2);
    let half = length.ratio(1, 2).unwrap_or(length);
    (half + half_inch).min(Length::from_nm(6 * Length::INCH.nm())).min(length)
}

/// The tapered tip of a lag screw of this diameter, where nobody measured it; none for diameters without a standard.
///
/// # Source
///
/// NDS 2018, appendix L, table L2; 3/8 and 1/2 in agree with worked examples, the others are from memory.
///
/// # Example
///
/// ```
/// use takeoff_core::model::usual_tip;
/// use takeoff_core::units::Length;
/// let inches = |text| Length::parse(text).unwrap();
/// assert_eq!(usual_tip(inches("5/16 in")), Some(inches("3/16 in")));
/// ```
pub fn usual_tip(diameter: Length) -> Option<Length> {
    let thirty_seconds = |n: i64| Length::from_nm(n * Length::INCH.nm() / 32);
    let tips = [(8, 5), (10, 6), (12, 7), (14, 9), (16, 10), (20, 13), (24, 16)];
    tips.iter().find(|(d, _)| thirty_seconds(*d) == diameter).map(|&(_, tip)| thirty_seconds(tip))
}
