//! What a bid adds to the materials.
use rust_decimal::Decimal;

use super::{Action, Currency, Money};

/// Labour, tax, contingency and markup.
#[derive(Clone, Debug)]
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

/// What an hour costs, and how long each action takes.
#[derive(Clone, Debug)]
pub struct Labour {
    pub(crate) rate_per_hour: Money,
    pub(crate) minutes: Minutes,
}

/// Minutes by action; an action without minutes is not timed.
#[derive(Clone, Debug, Default)]
pub struct Minutes(pub(crate) Vec<(Action, Decimal)>);

impl Minutes {
    /// The minutes that one such action takes.
    pub(crate) fn of(&self, action: Action) -> Option<Decimal> {
        self.0.iter().find(|(known, _)| *known == action).map(|(_, minutes)| *minutes)
    }
}
