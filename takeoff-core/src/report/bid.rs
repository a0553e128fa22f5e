//! The bid in words, and on screen: what is bought, the labour, and the price step by step.
use super::plain::number;
use super::quantity::Quantities;
use super::screen::Page;
use super::words;
use crate::pricing::{Bid, BidLine, BidTotals, LabourLine};
use crate::units::Money;

/// Shows the bid: lines with their packs, labour, what is in no total, and the price.
pub(super) fn show(page: &mut Page, bid: &Bid, shown: Quantities) {
    page.head(&format!("Bid in {}: materials in packs", bid.currency));
    for line in &bid.lines {
        amount(page, line.cost, &material(line, shown));
    }
    for item in &bid.unpriced {
        let need = shown.amount(item.need_with_waste, item.unit);
        unpaid(page, "no price", &format!("{}: {need}", item.item));
    }
    labour(page, bid);
    page.head(&format!("Price in {}", bid.currency));
    for (step, of) in steps(&bid.totals) {
        amount(page, of, &step);
    }
    let (unpriced, untimed) = (bid.unpriced.len() as u64, untimed(bid).count() as u64);
    let out = [("without a price", unpriced), ("not timed", untimed)];
    let out: Vec<String> = out.iter().filter(|(_, n)| *n > 0).map(|(why, n)| format!("{n} {why}")).collect();
    if !out.is_empty() {
        page.text("  ", "  ", &format!("In no total: {}; see above.", out.join(", ")));
    }
    page.text("  ", "  ", &format!("Rounding: {}.", bid.rounding));
}

fn labour(page: &mut Page, bid: &Bid) {
    let Some(rate) = bid.labour_rate_per_hour else { return };
    page.head(&format!("Labour at {rate} {} an hour", bid.currency));
    for line in &bid.labour {
        let LabourLine { count, basis, .. } = line;
        let work = format!("{count} {basis}");
        match (line.cost, line.minutes_each, line.minutes) {
            (Some(cost), Some(each), Some(minutes)) => {
                let work = format!("{work}, {} min each: {} min", number(each), number(minutes));
                amount(page, cost, &work);
            }
            _ => unpaid(page, "not timed", &work),
        }
    }
}

fn amount(page: &mut Page, amount: Money, what: &str) {
    unpaid(page, &amount.to_string(), what);
}

fn unpaid(page: &mut Page, instead: &str, what: &str) {
    page.text(&format!("  {instead:>12}  "), &" ".repeat(16), what);
}

/// `sealant: 1 × 10.1 fl oz at 7.45; 1 × 28 fl oz at 17.90 (for 31.7 fl oz, waste 10 %)`.
fn material(line: &BidLine, shown: Quantities) -> String {
    let need = shown.amount(line.need_with_waste, line.unit);
    let waste = match line.waste {
        0.0 => String::new(),
        waste => format!(", waste {} in it", words::percent(waste)),
    };
    format!("{}: {} (for {need}{waste})", line.item, packs(line))
}

/// `2 × 10.1 fl oz at 7.45`, for the packs that are bought.
pub(super) fn packs(line: &BidLine) -> String {
    let bought = line.packs.iter().filter(|pack| pack.packs > 0);
    let packs = bought.map(|pack| {
        let least = match pack.minimum_order {
            0 | 1 => String::new(),
            least => format!(" (sold from {least})"),
        };
        format!("{} × {} at {}{least}", pack.packs, pack.pack_shown, pack.unit_price)
    });
    packs.collect::<Vec<_>>().join("; ")
}

/// Terms of the price, in the order of their addition.
pub(super) fn steps(totals: &BidTotals) -> [(String, Money); 7] {
    let share = |what: &str, share: f64, of: &str| format!("{what}, {} of the {of}", words::percent(share));
    [
        ("materials".to_owned(), totals.materials),
        (share("tax", totals.tax_share, "materials"), totals.tax),
        ("labour".to_owned(), totals.labour),
        ("direct cost".to_owned(), totals.direct_cost),
        (share("contingency", totals.contingency_share, "direct cost"), totals.contingency),
        (share("markup", totals.markup_share, "direct cost with contingency"), totals.markup),
        ("price".to_owned(), totals.price),
    ]
}

/// Labour without minutes, which is in no total.
pub(super) fn untimed(bid: &Bid) -> impl Iterator<Item = &LabourLine> {
    bid.labour.iter().filter(|line| line.cost.is_none())
}
