//! Labour by action.
use super::Table;
use crate::report::document::Takeoff;

/// One row an action that there is any of; what is not timed has neither minutes nor cost. No rows where no labour is bid.
pub fn labour(takeoff: &Takeoff) -> Table<'_> {
    let bid = takeoff.bid.as_ref();
    let currency = bid.map_or("", |bid| bid.currency.as_str());
    let rate = bid.and_then(|bid| bid.labour_rate_per_hour);
    Table::from_rows(bid.into_iter().flat_map(|bid| &bid.labour).collect())
        .text("action", |line| line.action.words())
        .whole("count", |line| line.count)
        .number_if_any("each_min", |line| line.minutes_each)
        .number_if_any("total_min", |line| line.minutes)
        .money_if_any("rate_per_hour", |_| rate)
        .money_if_any("cost", |line| line.cost)
        .text("currency", |_| currency)
        .text("basis", |line| line.basis.as_str())
        .done()
}
