//! A price list: what is sold in which packs at what price.
use rust_decimal::Decimal;

use crate::units::{Currency, Money, Unit};

/// The packs on offer, in the order of the file.
#[derive(Clone, Debug, PartialEq)]
pub struct PriceList {
    pub(crate) file: String,
    pub(crate) currency: Currency,
    pub(crate) rows: Vec<PriceRow>,
}

/// A pack on offer.
#[derive(Clone, Debug, PartialEq)]
pub struct PriceRow {
    pub(crate) item: String,
    /// Unit of the pack's size.
    pub(crate) unit: Unit,
    /// Size of a pack, in `unit`.
    pub(crate) size: Decimal,
    /// Size as written, such as `10.1 fl oz`.
    pub(crate) shown: String,
    /// For one pack.
    pub(crate) price: Money,
    /// The least number of packs that is sold, 1 or more.
    pub(crate) minimum_order: u64,
    pub(crate) vendor_part: Option<String>,
    /// Line in the file.
    pub(crate) line: u64,
}

impl PriceList {
    /// The packs of an item, in the order of the file.
    pub(crate) fn of<'a>(&'a self, item: &'a str) -> impl Iterator<Item = &'a PriceRow> {
        self.rows.iter().filter(move |row| row.item == item)
    }

    /// Cost of one unit of an item: the least `price / size` of its packs, minimum orders apart; `None` without a price.
    pub(crate) fn unit_cost(&self, item: &str) -> Option<Money> {
        self.of(item).filter_map(|row| row.price.amount().checked_div(row.size)).min().map(Money::new)
    }
}
