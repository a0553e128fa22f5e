//! Underlayment and its lap lines.
use super::judge::{Input, Judge};
use super::range::Range;
use super::{Code, Problems};
use crate::units::Length;

/// A kind of underlayment, laid in sheets along the eave.
#[derive(Clone, Debug, PartialEq)]
pub struct Underlayment {
    pub(crate) name: String,
    /// Width of a sheet, `B`.
    pub(crate) sheet_width: Length,
    /// Lap of a sheet over the one below, `b`.
    pub(crate) head_lap: Length,
    pub(crate) roll_length: Option<Length>,
    /// Patches may be cut from it turned by 90°.
    pub(crate) turnable: bool,
    /// Stuck to the deck, or too old to bend: nothing is tucked under it.
    pub(crate) never_tucked: bool,
}

/// The lower edges of all sheets but the first.
#[derive(Clone, Debug, PartialEq)]
pub enum LapLines {
    /// `f0 + i·(B − b)`.
    Regular {
        /// `f0`.
        first: Length,
    },
    /// Measured, ascending.
    Measured(Vec<Length>),
}

/// An [`Underlayment`] in the making.
#[derive(Clone, Debug, Default)]
#[must_use]
pub struct UnderlaymentBuilder {
    pub(crate) name: String,
    pub(crate) sheet_width: Input<Length>,
    pub(crate) head_lap: Input<Length>,
    pub(crate) roll_length: Input<Length>,
    pub(crate) turnable: bool,
    pub(crate) never_tucked: bool,
}

impl Underlayment {
    /// An underlayment of a name.
    ///
    /// # Example
    ///
    /// Sheets of 36 in that lap by 2 in: a lap line every 34 in.
    ///
    /// ```
    /// use takeoff_core::{Length, Underlayment};
    /// let length = |text| Length::parse(text).unwrap();
    /// let felt = Underlayment::builder("felt-30").sheet_width(length("36 in")).head_lap(length("2 in"));
    /// assert!(felt.clone().build().is_ok());
    /// let problems = felt.head_lap(length("36 in")).build().unwrap_err();
    /// assert_eq!((problems[0].code.as_str(), problems[0].path.as_str()), ("sheet-lap-too-wide", "/head_lap"));
    /// ```
    pub fn builder(name: impl Into<String>) -> UnderlaymentBuilder {
        UnderlaymentBuilder { name: name.into(), ..UnderlaymentBuilder::default() }
    }
}

impl UnderlaymentBuilder {
    /// Width of a sheet.
    pub fn sheet_width(mut self, width: Length) -> Self {
        self.sheet_width = Input::Given(width);
        self
    }

    /// Lap of a sheet over the one below.
    pub fn head_lap(mut self, lap: Length) -> Self {
        self.head_lap = Input::Given(lap);
        self
    }

    /// Length of a roll; without it there is no cutting plan.
    pub fn roll_length(mut self, length: Length) -> Self {
        self.roll_length = Input::Given(length);
        self
    }

    /// Patches may be cut from it turned by 90°.
    pub fn turnable(mut self) -> Self {
        self.turnable = true;
        self
    }

    /// Stuck to the deck, or too old to bend: nothing is tucked under it.
    pub fn never_tucked(mut self) -> Self {
        self.never_tucked = true;
        self
    }

    /// The underlayment.
    ///
    /// # Errors
    ///
    /// A measure that is missing or out of range, and a lap as wide as the sheet.
    pub fn build(self) -> Result<Underlayment, Problems> {
        Judge::alone(|judge| self.judge(judge))
    }

    pub(crate) fn judge(self, judge: &mut Judge<'_>) -> Option<Underlayment> {
        let name = judge.name("", &self.name);
        let sheet_width = judge.length("", "sheet_width", self.sheet_width, Range::SIZE);
        let head_lap = judge.length("", "head_lap", self.head_lap, Range::GAP);
        let roll_length = judge.optional_length("", "roll_length", self.roll_length, Range::RUN);
        let (sheet_width, head_lap) = (sheet_width?, head_lap?);
        if head_lap >= sheet_width {
            let (lap, width) = (judge.shown("/head_lap", head_lap), judge.shown("/sheet_width", sheet_width));
            let message = format!("a lap of {lap} takes the whole sheet, {width} wide");
            let help = "the lap is how far a sheet lies over the one below";
            judge.report("/head_lap", Code::SheetLapTooWide, message, help);
        }
        let (turnable, never_tucked) = (self.turnable, self.never_tucked);
        Some(Underlayment { name: name?, sheet_width, head_lap, roll_length, turnable, never_tucked })
    }
}
