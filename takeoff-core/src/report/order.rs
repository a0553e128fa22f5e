//! An order on screen: what to buy for several jobs, in 80 columns.
use super::plain::number;
use super::quantity::Quantities;
use super::screen::Page;
use super::words;
use crate::order::OrderSpares;
use crate::pricing::{BidLine, Purchase};
use crate::report::document::Order;

/// The order for several jobs: what to bring, spare tiles, packs and their cost.
///
/// # Example
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::model::Job;
/// use takeoff_core::order::{order, Ordered};
/// use takeoff_core::report::{self, document};
/// use takeoff_core::takeoff;
/// let job = Job::read(EXAMPLE, &Files::new()).unwrap();
/// let ordered = Ordered { job: &job, takeoff: &takeoff(&job).unwrap() };
/// let text = report::order(&document::Order::from(&order(&[ordered]).unwrap()));
/// assert!(text.starts_with("One order for 1 job\n"));
/// ```
pub fn order(order: &Order) -> String {
    let shown = Quantities(order.display);
    let jobs = words::count(order.jobs.len() as u64, "job", "jobs");
    let mut page = Page::titled(&format!("One order for {jobs}"));
    order.jobs.iter().for_each(|job| page.text("  ", "      ", job));
    page.head("Materials to bring");
    for line in &order.materials {
        let amount = shown.amount(line.bring, line.unit);
        let from: Vec<String> =
            line.basis.iter().map(|basis| shown.amount(basis.count as f64 * basis.each, line.unit)).collect();
        let sum = if from.len() > 1 { format!(" ({})", from.join(" + ")) } else { String::new() };
        page.text(&format!("  {amount:>16}  "), &" ".repeat(22), &format!("{}{sum}", line.item));
    }
    let level = number(order.service_level * 100.0);
    page.head(&format!("Spare tiles among them, enough for all jobs together with {level} %"));
    order.spares.iter().for_each(|of_kind| page.text("  ", "      ", &spare_tiles(of_kind)));
    if let Some(purchase) = &order.purchase {
        bought(&mut page, purchase);
    }
    page.done()
}

fn spare_tiles(of_kind: &OrderSpares) -> String {
    let OrderSpares { tile, jobs, apart, spares } = of_kind;
    let jobs = words::count(jobs.len() as u64, "job", "jobs");
    format!("{tile}: {} for {jobs}; ordered one by one they would be {apart}", spares.spares)
}

fn bought(page: &mut Page, purchase: &Purchase) {
    let Purchase { currency, rounding, lines, unpriced, materials, .. } = purchase;
    page.head(&format!("Packs to buy, {currency}"));
    lines.iter().for_each(|line| {
        page.text(&format!("  {:>12}  ", line.cost.to_string()), &" ".repeat(16), &packs(line));
    });
    page.text(&format!("  {:>12}  ", materials.to_string()), &" ".repeat(16), "for all, before tax");
    page.text("  ", "  ", &format!("Rounding: {rounding}."));
    if !unpriced.is_empty() {
        let items: Vec<String> = unpriced.iter().map(|line| line.item.name()).collect();
        page.text("  ", "      ", &format!("Without a price, in no total: {}.", items.join("; ")));
    }
}

/// `sealant cartridge: 3 × 10.1 fl oz`.
fn packs(line: &BidLine) -> String {
    let packs = line.packs.iter().filter(|pack| pack.packs > 0);
    let packs: Vec<String> = packs.map(|pack| format!("{} × {}", pack.packs, pack.pack_shown)).collect();
    format!("{}: {}", line.item, packs.join(", "))
}
