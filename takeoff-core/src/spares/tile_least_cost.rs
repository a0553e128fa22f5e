//! The spares at the least expected cost, beside those for the service level.
use rust_decimal::prelude::ToPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use super::Spares;
use crate::materials::{Material, Piece};
use crate::model::{Code, Job, Problem};
use crate::units::Money;

/// The number of spares at the least expected cost, where the job gives the cost of a tile short and the price list the
/// cost of a tile.
pub(super) fn least_cost(job: &Job, piece: &Piece, spares: &Spares) -> Option<LeastCost> {
    let (cost_of_short, prices) = (job.practice.cost_of_short?, job.prices.as_ref()?);
    let unit_cost = prices.unit_cost(&Material::SpareTile(piece.clone()).name())?.amount();
    let cost_ratio = unit_cost.checked_div(cost_of_short.amount()).and_then(|ratio| ratio.to_f64());
    // Where being short costs nothing, no spare pays.
    let cost_ratio = cost_ratio.unwrap_or(1.0).min(1.0);
    let to_buy = spares.to_buy_at_least_cost(cost_ratio)?;
    Some(LeastCost {
        currency: prices.currency.code().to_owned(),
        unit_cost: prices.currency.round(unit_cost),
        cost_of_short,
        cost_ratio,
        spares: to_buy,
        stockout_probability: spares.stockout_probability_with(to_buy),
    })
}

/// A finding on a piece without a number of spares at the least expected cost, where the job gives the cost of a tile
/// short.
pub(super) fn no_least_cost(job: &Job, piece: &Piece) -> Option<Problem> {
    job.practice.cost_of_short.map(|_| {
        let spare_tile = Material::SpareTile(piece.clone());
        let message = format!("the least expected cost of `{spare_tile}` can't be told");
        let help = "give a price for it, each, and if it has one, the crew's record more weight";
        Problem::new(Code::NoLeastCost, message, help, "/practice/cost_of_short")
    })
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
    #[serde(rename = "chance_short")]
    pub stockout_probability: f64,
}
