//! Cost of a job.
use schemars::JsonSchema;
use serde::Serialize;

use crate::materials::Material;
use crate::model::Action;
use crate::units::{Money, Unit};

/// Cost of a job: materials by their packs, labour by action, and what is added.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Bid {
    /// Three-letter code of the currency of every amount here.
    pub currency: String,
    /// How amounts are rounded, in words.
    pub rounding: String,
    /// Materials with a price, in the order of the material list.
    pub lines: Vec<BidLine>,
    /// Materials that the price list does not have: they are in no total.
    pub unpriced: Vec<Unpriced>,
    /// What an hour of labour costs, if the job says.
    pub labour_rate_per_hour: Option<Money>,
    /// Labour by action; empty when the job says nothing of labour.
    pub labour: Vec<LabourLine>,
    /// From the lines to the price.
    pub totals: BidTotals,
    /// Rows of the price list that nothing here takes.
    pub unused_prices: Vec<UnusedPrice>,
}

/// What is bought for one job or several: every material that has a price in its cheapest packs.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Purchase {
    /// Three-letter code of the currency of every amount here.
    pub currency: String,
    /// How amounts are rounded, in words.
    pub rounding: String,
    /// Materials with a price, in the order of the material list.
    pub lines: Vec<BidLine>,
    /// Materials that the price list does not have: they are in no total.
    pub unpriced: Vec<Unpriced>,
    /// Rows of the price list that nothing here takes.
    pub unused_prices: Vec<UnusedPrice>,
    /// Sum of the lines.
    pub materials: Money,
}

/// A material with its packs.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BidLine {
    /// The line of the material list.
    pub item: Material,
    /// Unit of `need`, `need_with_waste`, `bought` and of each `pack`.
    pub unit: Unit,
    /// How much the work takes, before waste.
    pub need: f64,
    /// Share added for waste.
    pub waste: f64,
    /// `need × (1 + waste)`.
    pub need_with_waste: f64,
    /// Every pack on offer, in the order of the price list, with how many of it are bought.
    pub packs: Vec<BidPack>,
    /// What the bought packs hold together.
    pub bought: f64,
    /// The greatest common measure of the packs, of which a mix holds whole ones, in `unit`.
    #[serde(skip)]
    pub measure: f64,
    /// Sum of the packs' costs.
    pub cost: Money,
    /// How the packs were chosen, in words.
    pub basis: String,
}

/// A pack on offer, and how many of it are bought.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BidPack {
    /// What one pack holds, in the line's unit.
    pub pack: f64,
    /// The same as the price list has it, such as `10.1 fl oz`.
    pub pack_shown: String,
    /// How many packs are bought.
    pub packs: u64,
    /// The least number of packs that is sold.
    pub minimum_order: u64,
    /// Price of one pack.
    pub unit_price: Money,
    /// `packs × unit_price`, rounded.
    pub cost: Money,
    /// The vendor's part, as the price list has it.
    pub vendor_part: Option<String>,
    /// Line of the price list.
    pub price_line: u64,
}

/// A material without a price.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Unpriced {
    /// The line of the material list.
    pub item: Material,
    /// Unit of `need_with_waste`.
    pub unit: Unit,
    /// `need × (1 + waste)`.
    pub need_with_waste: f64,
}

/// Labour for one kind of action.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct LabourLine {
    /// The action.
    pub action: Action,
    /// How many times.
    pub count: u64,
    /// Minutes each time; `None` is not timed, and in no total.
    pub minutes_each: Option<f64>,
    /// `count × minutes_each`.
    pub minutes: Option<f64>,
    /// `minutes / 60 × rate per hour`, rounded.
    pub cost: Option<Money>,
    /// What was counted, in words.
    pub basis: String,
}

/// From the lines to the price, in the order in which it is computed; each amount rounded.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BidTotals {
    /// Sum of the lines.
    pub materials: Money,
    /// Tax as a share of the materials.
    pub tax_share: f64,
    /// `materials × tax_share`.
    pub tax: Money,
    /// Sum of the labour lines.
    pub labour: Money,
    /// `materials + tax + labour`.
    pub direct_cost: Money,
    /// Contingency as a share of the direct cost.
    pub contingency_share: f64,
    /// `direct_cost × contingency_share`.
    pub contingency: Money,
    /// Markup as a share of direct cost and contingency.
    pub markup_share: f64,
    /// `(direct_cost + contingency) × markup_share`.
    pub markup: Money,
    /// `direct_cost + contingency + markup`.
    pub price: Money,
}

/// A row of the price list that nothing takes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct UnusedPrice {
    /// Its item.
    pub item: String,
    /// Line of the price list.
    pub price_line: u64,
}
