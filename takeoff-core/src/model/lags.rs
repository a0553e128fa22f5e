//! The lag screws of a post, and how much of their thread is in the wood.
use schemars::JsonSchema;
use serde::Serialize;

use super::judge::{Input, Judge, LENGTH};
use super::range::Range;
use super::{Code, Problems, of};
use crate::units::Length;

/// The lag screws of one post.
#[derive(Clone, Debug, PartialEq)]
pub struct Lags {
    /// Number of lags per post.
    pub(crate) count: u32,
    /// Of the shank.
    pub(crate) diameter: Length,
    /// From under the head to the point.
    pub(crate) length: Length,
    /// Thread, the tapered tip included.
    pub(crate) thread_length: Length,
    /// The tapered tip.
    pub(crate) tip: Length,
    /// Thickness between the heads and the deck.
    pub(crate) shim: Length,
    /// From the outermost to the outermost across the rafter.
    pub(crate) across: Length,
    /// From lag to lag, the nearest two.
    pub(crate) spacing: Option<Length>,
}

/// Limit of the thread in the wood.
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
    /// Length without the tapered tip.
    pub length: Length,
    /// Its limit.
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

/// [`Lags`] in the making.
#[derive(Clone, Debug, Default)]
#[must_use]
pub struct LagsBuilder {
    pub(crate) count: Input<u32>,
    pub(crate) diameter: Input<Length>,
    pub(crate) length: Input<Length>,
    pub(crate) thread_length: Input<Length>,
    pub(crate) tip: Input<Length>,
    pub(crate) shim: Input<Length>,
    pub(crate) across: Input<Length>,
    pub(crate) spacing: Input<Length>,
}

impl Lags {
    /// Lags by their number, diameter and length.
    ///
    /// # Example
    ///
    /// Two lags of 5/16 × 3 in: 2 in of thread and a tip of 5/32 in unless somebody measures them.
    ///
    /// ```
    /// use takeoff_core::{Lags, Length};
    /// let length = |text| Length::parse(text).unwrap();
    /// let lags = Lags::builder(2, length("5/16 in"), length("3 in"));
    /// assert!(lags.clone().build().is_ok());
    /// assert_eq!(lags.thread_length(length("4 in")).build().unwrap_err()[0].code, "lag-thread");
    /// ```
    pub fn builder(count: u32, diameter: Length, length: Length) -> LagsBuilder {
        let (count, diameter, length) = (Input::Given(count), Input::Given(diameter), Input::Given(length));
        LagsBuilder { count, diameter, length, ..LagsBuilder::default() }
    }
}

impl LagsBuilder {
    /// Length of the thread, its tip included.
    pub fn thread_length(mut self, length: Length) -> Self {
        self.thread_length = Input::Given(length);
        self
    }

    /// Length of the tapered tip; needed where the diameter is not a usual one.
    pub fn tip(mut self, length: Length) -> Self {
        self.tip = Input::Given(length);
        self
    }

    /// Thickness between the heads and the deck.
    pub fn shim(mut self, thickness: Length) -> Self {
        self.shim = Input::Given(thickness);
        self
    }

    /// Distance of the outermost two across the rafter.
    pub fn across(mut self, distance: Length) -> Self {
        self.across = Input::Given(distance);
        self
    }

    /// Distance of the nearest two.
    pub fn spacing(mut self, distance: Length) -> Self {
        self.spacing = Input::Given(distance);
        self
    }

    /// The lags.
    ///
    /// # Errors
    ///
    /// A measure out of range, a tip that is needed and missing, and thread that is longer than the lag.
    pub fn build(self) -> Result<Lags, Problems> {
        Judge::alone(|judge| self.judge("", "", judge))
    }

    /// The lags of an assembly, at a path from it.
    pub(crate) fn judge(self, assembly: &str, at: &str, judge: &mut Judge<'_>) -> Option<Lags> {
        let count = judge.needed(at, "count", self.count, "a whole number, such as `2`");
        if count == Some(0) {
            let message = "`0` is not a count from 1 to 1000000";
            judge.report(
                &format!("{at}/count"),
                Code::OutOfRange,
                message,
                "write a whole number, such as `2`",
            );
        }
        let diameter = judge.length(at, "diameter", self.diameter, Range::SIZE);
        let length = judge.length(at, "length", self.length, Range::SIZE);
        let mut optional = |name, input, range| judge.optional_length(at, name, input, range);
        let thread_length = optional("thread_length", self.thread_length, Range::SIZE);
        let tip = optional("tip", self.tip, Range::GAP);
        let shim = optional("shim", self.shim, Range::GAP);
        let across = optional("across", self.across, Range::GAP);
        let spacing = optional("spacing", self.spacing, Range::SIZE);

        let (diameter, length) = (diameter?, length?);
        let assume = |judge: &mut Judge<'_>, what, given: Option<Length>, usual| {
            judge.assumptions.length(of(what, assembly), given, usual)
        };
        let thread_length = assume(judge, "thread of a lag", thread_length, usual_thread(length));
        let tip = match (usual_tip(diameter), tip) {
            (None, None) => judge.needed(at, "tip", self.tip, LENGTH)?,
            (usual, given) => assume(judge, "tapered tip of a lag", given, usual.unwrap_or_default()),
        };
        if thread_length > length || tip > thread_length {
            let shown = judge.shown(&format!("{at}/length"), length);
            let message = format!("a lag of {shown} has no such thread and tip");
            let help = "the thread is at most as long as the lag, and its tip is part of the thread";
            judge.report(at, Code::LagThread, message, help);
            return None;
        }
        Some(Lags {
            count: count?,
            diameter,
            length,
            thread_length,
            tip,
            shim: assume(judge, "between a lag's head and the deck", shim, Length::ZERO),
            across: assume(judge, "outermost lag to outermost, across the rafter", across, Length::ZERO),
            spacing,
        })
    }
}
