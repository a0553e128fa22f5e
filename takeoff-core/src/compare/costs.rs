//! Totals of the bid that changed.
use schemars::JsonSchema;
use serde::Serialize;

use crate::pricing::{Bid, BidTotals};
use crate::takeoff::Takeoff;
use crate::units::Money;

/// A total of the bid that changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CostChange {
    /// Which total.
    pub what: String,
    /// Currency of both amounts.
    pub currency: String,
    /// As bid.
    pub bid: Money,
    /// As built.
    pub as_built: Money,
}

type Total = fn(&BidTotals) -> Money;

const TOTALS: [(&str, Total); 7] = [
    ("materials", |totals| totals.materials),
    ("tax", |totals| totals.tax),
    ("labour", |totals| totals.labour),
    ("direct cost", |totals| totals.direct_cost),
    ("contingency", |totals| totals.contingency),
    ("markup", |totals| totals.markup),
    ("price", |totals| totals.price),
];

/// The bids of two takeoffs, where both have one and in the same currency: others are not compared.
pub(super) fn bids<'t>(bid: &'t Takeoff, as_built: &'t Takeoff) -> Option<[&'t Bid; 2]> {
    let bids = [bid.bid.as_ref()?, as_built.bid.as_ref()?];
    (bids[0].currency == bids[1].currency).then_some(bids)
}

/// The totals that are not the same in both, in the order in which the price is made up.
pub(super) fn changes([bid, as_built]: [&Bid; 2]) -> Vec<CostChange> {
    let all = TOTALS.iter().map(|(what, total)| CostChange {
        what: (*what).to_owned(),
        currency: bid.currency.clone(),
        bid: total(&bid.totals),
        as_built: total(&as_built.totals),
    });
    all.filter(|change| change.bid != change.as_built).collect()
}
