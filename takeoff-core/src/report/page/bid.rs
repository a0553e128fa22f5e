//! The bid: the price, what it is made of, and what is in no total.
use super::super::bid::{packs, steps, untimed};
use super::super::markup::Markup;
use super::super::plain::number;
use super::super::quantity::Quantities;
use super::super::words;
use super::grid::Grid;
use super::section::Section;
use crate::pricing::{Bid, BidLine, LabourLine};
use crate::report::document::Takeoff;

/// The bid, where the job asks for one.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    let bid = takeoff.bid.as_ref()?;
    let shown = Quantities(takeoff.display);
    let section = Section::new("bid", "Bid", |html| {
        html.tag("p").with("class", "price").text(&price(bid));
        html.tag("p").text(&format!("Amounts in {}: {}.", bid.currency, bid.rounding));
        unpriced(html, bid, shown);
        Grid::new("From the lines to the price", &steps(&bid.totals))
            .name("step", |(step, _)| step.clone())
            .number("amount", |(_, amount)| amount.to_string())
            .write(html);
        materials(html, bid, shown);
        labour(html, bid);
        unused(html, bid);
    });
    Some(section.on_new_page())
}

/// `Price: 1234.50 USD`.
pub(super) fn price(bid: &Bid) -> String {
    format!("Price: {} {}", bid.totals.price, bid.currency)
}

/// Items without a price and actions without minutes, which are in no total.
fn unpriced(html: &mut Markup, bid: &Bid, shown: Quantities) {
    let untimed: Vec<&LabourLine> = untimed(bid).collect();
    if bid.unpriced.is_empty() && untimed.is_empty() {
        return;
    }
    html.tag("div").with("class", "caution").with("role", "note").holds(|html| {
        html.tag("p").holds(|html| html.tag("b").text("Not in the price:"));
        html.tag("ul").holds(|html| {
            for item in &bid.unpriced {
                let need = shown.amount(item.need_with_waste, item.unit);
                html.tag("li").text(&format!("{}: {need}, without a price", item.item));
            }
            for line in untimed {
                let what = line.action.words();
                html.tag("li").text(&format!("{what}, {} times: not timed", line.count));
            }
        });
    });
}

fn materials(html: &mut Markup, bid: &Bid, shown: Quantities) {
    Grid::new("Materials in packs", &bid.lines)
        .name("item", |line| line.item.name())
        .number("need", |line| shown.amount(line.need, line.unit))
        .number("waste", |line| if line.waste == 0.0 { String::new() } else { words::percent(line.waste) })
        .number("with waste", |line| shown.amount(line.need_with_waste, line.unit))
        .words("packs, each at", packs)
        .words("vendor part", parts)
        .number("cost", |line| line.cost.to_string())
        .words("how chosen", |line| line.basis.clone())
        .write(html);
}

fn parts(line: &BidLine) -> String {
    let bought = line.packs.iter().filter(|pack| pack.packs > 0);
    bought.filter_map(|pack| pack.vendor_part.clone()).collect::<Vec<_>>().join("; ")
}

fn labour(html: &mut Markup, bid: &Bid) {
    let caption = match bid.labour_rate_per_hour {
        Some(rate) => format!("Labour at {rate} {} an hour", bid.currency),
        None => "Labour".to_owned(),
    };
    let minutes = |minutes: Option<f64>| minutes.map(number).unwrap_or_default();
    Grid::new(caption, &bid.labour)
        .name("action", |line| line.action.words().to_owned())
        .number("count", |line| line.count.to_string())
        .number("minutes each", |line| minutes(line.minutes_each))
        .number("minutes", |line| minutes(line.minutes))
        .number("cost", |line| line.cost.map_or("not timed".to_owned(), |cost| cost.to_string()))
        .words("what is counted", |line| line.basis.clone())
        .write(html);
}

fn unused(html: &mut Markup, bid: &Bid) {
    if bid.unused_prices.is_empty() {
        return;
    }
    let unused = bid.unused_prices.iter().map(|row| format!("{} (line {})", row.item, row.price_line));
    let unused = unused.collect::<Vec<_>>().join(", ");
    html.tag("p")
        .with("class", "note")
        .text(&format!("Rows of the price list that nothing takes: {unused}."));
}
