//! The packs that are bought.
use super::Table;
use crate::pricing::{BidLine, BidPack, Purchase};

/// One row a kind of pack that is bought, item by item in the order of the material list; sums of money as decimals.
pub fn packs(purchase: &Purchase) -> Table<'_> {
    let of_line = |line| line_packs(line).map(move |pack| (line, pack));
    Table::from_rows(purchase.lines.iter().flat_map(of_line).collect())
        .text("item", |(line, _)| line.item.name())
        .text("pack", |(_, pack)| pack.pack_shown.as_str())
        .whole("packs", |(_, pack)| pack.packs)
        .text("unit_price", |(_, pack)| pack.unit_price.to_string())
        .text("cost", |(_, pack)| pack.cost.to_string())
        .text("currency", |_| purchase.currency.as_str())
        .text_if_any("vendor_part", |(_, pack)| pack.vendor_part.as_deref())
        .whole("price_line", |(_, pack)| pack.price_line)
        .done()
}

fn line_packs(line: &BidLine) -> impl Iterator<Item = &BidPack> {
    line.packs.iter().filter(|pack| pack.packs > 0)
}
