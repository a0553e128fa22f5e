//! Purchases and their cost.
use super::super::words;
use super::Table;
use crate::materials::Material;
use crate::pricing::{Bid, BidLine, BidPack, Unpriced};
use crate::report::document::Takeoff;
use crate::units::Unit;

/// A row of the bid.
#[derive(Clone, Copy)]
enum Row<'a> {
    Bought(&'a BidLine, &'a BidPack),
    Unpriced(&'a Unpriced),
}

impl<'a> Row<'a> {
    fn all(bid: &'a Bid) -> impl Iterator<Item = Row<'a>> {
        let of_line = |line: &'a BidLine| {
            let bought = line.packs.iter().filter(|pack| pack.packs > 0);
            bought.map(move |pack| Row::Bought(line, pack))
        };
        bid.lines.iter().flat_map(of_line).chain(bid.unpriced.iter().map(Row::Unpriced))
    }

    fn line(self) -> Option<&'a BidLine> {
        match self {
            Row::Bought(line, _) => Some(line),
            Row::Unpriced(_) => None,
        }
    }

    fn pack(self) -> Option<&'a BidPack> {
        match self {
            Row::Bought(_, pack) => Some(pack),
            Row::Unpriced(_) => None,
        }
    }

    fn item(self) -> (&'a Material, Unit, f64) {
        match self {
            Row::Bought(line, _) => (&line.item, line.unit, line.need_with_waste),
            Row::Unpriced(line) => (&line.item, line.unit, line.need_with_waste),
        }
    }
}

/// One row a pack that is bought, then one an item without a price; none where there is no bid.
///
/// `need`, `need_with_waste` and `pack` are in the unit that the column `unit` names, and stand in every row of an item.
pub fn bid(takeoff: &Takeoff) -> Table<'_> {
    let bid = takeoff.bid.as_ref();
    let currency = bid.map_or("", |bid| bid.currency.as_str());
    Table::from_rows(bid.into_iter().flat_map(Row::all).collect())
        .text("item", |row| row.item().0.name())
        .text("unit", |row| words::unit(row.item().1))
        .number_if_any("need", |row| Some(row.line()?.need))
        .number_if_any("waste_share", |row| Some(row.line()?.waste))
        .number("need_with_waste", |row| row.item().2)
        .number_if_any("pack", |row| Some(row.pack()?.pack))
        .text_if_any("pack_shown", |row| Some(row.pack()?.pack_shown.as_str()))
        .whole_if_any("packs", |row| Some(row.pack()?.packs))
        .money_if_any("unit_price", |row| Some(row.pack()?.unit_price))
        .money_if_any("cost", |row| Some(row.pack()?.cost))
        .text("currency", |_| currency)
        .text_if_any("vendor_part", |row| row.pack()?.vendor_part.as_deref())
        .whole_if_any("price_line", |row| Some(row.pack()?.price_line))
        .text("basis", |row| row.line().map_or("without a price, in no total", |line| &line.basis))
        .done()
}
