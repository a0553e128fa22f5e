//! Material lines added, gone and changed.
use schemars::JsonSchema;
use serde::Serialize;

use super::pairs::pairs;
use crate::takeoff::{MaterialLine, Unit};

/// A material line that changed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct MaterialChange {
    /// What to buy.
    pub item: String,
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
}

impl Amount {
    fn of(line: &MaterialLine) -> Amount {
        Amount { need: line.need, bring: line.bring }
    }
}

/// The lines that are not the same in both. A need that comes about in another way is no change.
pub(super) fn changes(bid: &[MaterialLine], as_built: &[MaterialLine]) -> Vec<MaterialChange> {
    let changed =
        pairs(by_item(bid), by_item(as_built)).into_iter().filter_map(|((item, unit), bid, as_built)| {
            let (bid, as_built) = (bid.map(Amount::of), as_built.map(Amount::of));
            if bid == as_built {
                return None;
            }
            Some(MaterialChange { item: item.to_owned(), unit, bid, as_built })
        });
    changed.collect()
}

fn by_item(lines: &[MaterialLine]) -> impl Iterator<Item = ((&str, Unit), &MaterialLine)> + Clone {
    lines.iter().map(|line| ((line.item.as_str(), line.unit), line))
}
