//! Material lines added, gone and changed.
use schemars::JsonSchema;
use serde::Serialize;

use super::pairs::pairs;
use crate::materials::Material;
use crate::pricing::Bid;
use crate::quantities::MaterialLine;
use crate::units::{Money, Unit};

/// A material line that changed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct MaterialChange {
    /// What to buy.
    pub item: Material,
    /// Its unit.
    pub unit: Unit,
    /// As bid; `None` where it was added.
    pub bid: Option<Amount>,
    /// As built; `None` where it is gone.
    pub as_built: Option<Amount>,
}

/// How much of a line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Amount {
    /// What the work takes, before waste.
    pub need: f64,
    /// What to bring.
    pub bring: f64,
    /// What its packs cost, where both have a bid in one currency and this one a price.
    pub cost: Option<Money>,
}

impl Amount {
    fn new(line: &MaterialLine, bid: Option<&Bid>) -> Amount {
        let paid = bid.and_then(|bid| bid.lines.iter().find(|paid| paid.item == line.item));
        Amount { need: line.need, bring: line.bring, cost: paid.map(|paid| paid.cost) }
    }
}

/// The lines that are not the same in both. Another basis of the same amounts is no change.
pub(super) fn changes([bid, as_built]: [&[MaterialLine]; 2], bids: Option<[&Bid; 2]>) -> Vec<MaterialChange> {
    let [cost_bid, cost_built] = bids.map_or([None; 2], |bids| bids.map(Some));
    let changed = pairs(by_item(bid), by_item(as_built)).into_iter().filter_map(|(item, bid, as_built)| {
        let bid = bid.map(|line| Amount::new(line, cost_bid));
        let as_built = as_built.map(|line| Amount::new(line, cost_built));
        (bid != as_built).then(|| MaterialChange { item: item.clone(), unit: item.unit(), bid, as_built })
    });
    changed.collect()
}

fn by_item(lines: &[MaterialLine]) -> impl Iterator<Item = (&Material, &MaterialLine)> + Clone {
    lines.iter().map(|line| (&line.item, line))
}
