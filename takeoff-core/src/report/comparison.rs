//! A comparison on screen: what changed, in 80 columns.
use super::quantity::Quantities;
use super::screen::Page;
use super::words;
use crate::compare::{Amount, CostChange, CountChange, MaterialChange};
use crate::report::document::{Comparison, PostChange, PostPlace};

/// The comparison of a takeoff as bid and as built, a line a change.
///
/// # Example
///
/// ```
/// use takeoff_core::compare::compare;
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::model::Job;
/// use takeoff_core::report::{self, document};
/// use takeoff_core::takeoff;
/// let bid = Job::read(EXAMPLE, &Files::new()).unwrap();
/// let built = bid.as_built("built.csv", "slope,name,assembly,u,v\n").unwrap();
/// let (bid, built) = (takeoff(&bid).unwrap(), takeoff(&built).unwrap());
/// let text = report::comparison(&document::Comparison::from(&compare(&bid, &built)));
/// assert!(text.contains("south/A1: not built"));
/// ```
pub fn comparison(comparison: &Comparison) -> String {
    let shown = Quantities(comparison.display);
    let Comparison { bid, as_built, counts, posts, materials, costs, .. } = comparison;
    let names = if bid == as_built { bid.clone() } else { format!("{bid} and {as_built}") };
    let mut page = Page::titled(&format!("{names}: as bid and as built"));
    if !comparison.changed {
        page.head("Nothing changed.");
        return page.done();
    }
    if !counts.is_empty() {
        page.head("Totals that changed");
        counts.iter().for_each(|change| page.text("  ", "      ", &count(change)));
    }
    if !posts.is_empty() {
        page.head(&format!("Posts that changed: {}", posts.len()));
        posts.iter().for_each(|change| page.text("  ", "      ", &post(change, shown)));
    }
    if !materials.is_empty() {
        page.head(&format!("Material lines that changed: {}", materials.len()));
        materials.iter().for_each(|change| page.text("  ", "      ", &material(change, shown)));
    }
    if !costs.is_empty() {
        page.head("Cost that changed");
        costs.iter().for_each(|change| page.text("  ", "      ", &cost(change)));
    }
    page.done()
}

fn count(change: &CountChange) -> String {
    let CountChange { what, bid, as_built } = change;
    format!("{what}: {bid} as bid, {as_built} as built ({:+})", i128::from(*as_built) - i128::from(*bid))
}

fn cost(change: &CostChange) -> String {
    let CostChange { what, currency, bid, as_built } = change;
    let by = as_built.amount() - bid.amount();
    format!("{what}: {bid} as bid, {as_built} as built ({by:+} {currency})")
}

fn post(change: &PostChange, shown: Quantities) -> String {
    let PostChange { slope, post, moved_mm, bid, as_built, .. } = change;
    let change_text = match (bid, as_built) {
        (Some(bid), Some(built)) => {
            let assembly = (bid.assembly != built.assembly)
                .then(|| format!("`{}` in place of `{}`", built.assembly, bid.assembly));
            let (before, now) = (work(bid), work(built));
            let work = if before == now { now } else { format!("{before} → {now}") };
            let moved = moved_mm.and_then(|by| shown.ways(by)).map(|ways| format!("moved {ways}"));
            [moved, assembly, Some(work)].into_iter().flatten().collect::<Vec<_>>().join("; ")
        }
        (None, Some(built)) => {
            let (u, v) = (shown.length(built.u_mm), shown.length(built.v_mm));
            format!("added at u {u}, v {v}: {}", work(built))
        }
        (_, None) => "not built".to_owned(),
    };
    format!("{slope}/{post}: {change_text}")
}

fn work(place: &PostPlace) -> String {
    let severed = if place.severed { ", a tile to replace" } else { "" };
    format!("{}{severed}, {}", words::situation(place.situation), words::deck_method(place.method))
}

fn material(change: &MaterialChange, shown: Quantities) -> String {
    let amount = |amount: f64| shown.amount(amount, change.unit);
    let change_text = match (change.bid, change.as_built) {
        (Some(bid), Some(built)) if bid.bring == built.bring => {
            format!(
                "need {} → {}, bring {} as before",
                amount(bid.need),
                amount(built.need),
                amount(bid.bring)
            )
        }
        (Some(bid), Some(built)) => format!("bring {} → {}", amount(bid.bring), amount(built.bring)),
        (None, Some(built)) => format!("added, {}", amount(built.bring)),
        (bid, None) => format!("gone, {} as bid", amount(bid.map_or(0.0, |bid| bid.bring))),
    };
    format!("{}: {change_text}{}", change.item, paid(change.bid, change.as_built))
}

/// `; cost 25.35 → 33.00`, where the line has a price.
fn paid(bid: Option<Amount>, as_built: Option<Amount>) -> String {
    match [bid, as_built].map(|amount| amount.and_then(|amount| amount.cost)) {
        [Some(bid), Some(built)] if bid == built => format!("; cost {bid} as before"),
        [Some(bid), Some(built)] => format!("; cost {bid} → {built}"),
        [Some(cost), None] | [None, Some(cost)] => format!("; cost {cost}"),
        [None, None] => String::new(),
    }
}
