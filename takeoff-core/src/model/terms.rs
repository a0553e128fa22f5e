//! Terms of a bid: what it adds to the materials.
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

use crate::units::{Currency, Money};

/// Labour, tax, contingency and markup.
#[derive(Clone, Debug, PartialEq)]
pub struct Terms {
    pub(crate) currency: Currency,
    pub(crate) labour: Option<Labour>,
    /// Share of the materials.
    pub(crate) tax: Decimal,
    /// Share of materials, tax and labour.
    pub(crate) contingency: Decimal,
    /// Share of all that and the contingency.
    pub(crate) markup: Decimal,
}

/// Cost of an hour, and minutes of each action.
#[derive(Clone, Debug, PartialEq)]
pub struct Labour {
    pub(crate) rate_per_hour: Money,
    pub(crate) minutes: Minutes,
}

/// Minutes by action; an action without minutes is not timed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Minutes(pub(crate) Vec<(Action, Decimal)>);

impl Minutes {
    /// The minutes that one such action takes.
    pub(crate) fn of(&self, action: Action) -> Option<Decimal> {
        self.0.iter().find(|(known, _)| *known == action).map(|(_, minutes)| *minutes)
    }
}

/// What the crew does, counted by the takeoff.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Action {
    /// A tile taken up and laid back.
    Lift,
    /// A tile loosened in place.
    Loosen,
    /// A sound tile taken from under an array.
    Harvest,
    /// A hole cut in a tile.
    CutHole,
    /// A notch or a corner cut out of a tile.
    CutNotch,
    /// A severed tile made up from new ones.
    MakeUp,
    /// A patch of underlayment.
    Patch,
    /// A deck flashing dried in with three courses.
    ThreeCourse,
    /// A blocking board between two rafters.
    Block,
    /// A piece of batten cut out and reset.
    Batten,
    /// A post set, with its flashings, fasteners and sealant.
    Set,
}

impl Action {
    /// What is done, in words.
    pub fn words(self) -> &'static str {
        match self {
            Action::Lift => "a tile removed and reset",
            Action::Loosen => "a tile raised",
            Action::Harvest => "a tile salvaged from under an array",
            Action::CutHole => "a hole cut",
            Action::CutNotch => "a notch or a corner notch cut",
            Action::MakeUp => "a tile replaced that can't be cut in one piece",
            Action::Patch => "a felt patch",
            Action::ThreeCourse => "a flashing in three courses",
            Action::Block => "a piece of blocking",
            Action::Batten => "a batten piece reset",
            Action::Set => "a post set",
        }
    }
}
