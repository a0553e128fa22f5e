//! The spares at the least expected cost, beside those for the service level.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use super::TileSpares;
use crate::model::{Code, Job, PriceList, Problem};
use crate::units::Money;

/// The number of spares at the least expected cost, where the job says what a tile short costs and the price list what
/// a tile costs.
pub(super) fn least_cost(job: &Job, of_kind: &TileSpares) -> Option<LeastCost> {
    let (cost_of_short, prices) = (job.practice.cost_of_short?, job.prices.as_ref()?);
    let unit_cost = price_of_one(prices, &of_kind.item())?;
    let cost_ratio = unit_cost.checked_div(cost_of_short.amount()).and_then(|ratio| ratio.to_f64());
    // Where being short costs nothing, no spare pays.
    let cost_ratio = cost_ratio.unwrap_or(1.0).min(1.0);
    let spares = of_kind.spares.to_buy_at_least_cost(cost_ratio)?;
    Some(LeastCost {
        currency: prices.currency.code().to_owned(),
        unit_cost: prices.currency.round(unit_cost),
        cost_of_short,
        cost_ratio,
        spares,
        chance_short: of_kind.spares.chance_short_with(spares),
    })
}

/// A finding where the cost of a tile short is given and none of the least cost can be told.
pub(super) fn without_price(job: &Job, of_kind: &TileSpares) -> Option<Problem> {
    let asked = job.practice.cost_of_short.is_some() && of_kind.least_cost.is_none();
    asked.then(|| {
        let message = format!("the least expected cost of `{}` can't be told", of_kind.item());
        let help = "give a price for it, each, and if it has one, the crew's record more weight";
        Problem::new(Code::NoLeastCost, message, help, "/practice/cost_of_short")
    })
}

/// What one tile costs: in packs, its share of the cheapest, minimum orders apart.
fn price_of_one(prices: &PriceList, item: &str) -> Option<Decimal> {
    prices.of(item).filter_map(|row| row.price.amount().checked_div(row.size)).min()
}

/// Spares at the least expected cost: that of the tiles bought, and of those that are short.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct LeastCost {
    /// Currency of both costs.
    pub currency: String,
    /// Cost of one tile; in packs, its share of the cheapest, rounded here.
    pub unit_cost: Money,
    /// Cost of each tile short, as the job has it.
    pub cost_of_short: Money,
    /// Unit cost over cost of short, 1 at most: a tile more pays as long as the chance of running short is above it.
    pub cost_ratio: f64,
    /// Tiles to buy: for breakage the least number with a chance of running short up to `cost_ratio`, and the pieces
    /// for severed tiles, less those on hand and harvested, never below 0.
    pub spares: u64,
    /// The probability that these are not enough.
    pub chance_short: f64,
}
