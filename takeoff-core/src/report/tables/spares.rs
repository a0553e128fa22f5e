//! The spare tiles.
use super::Table;
use crate::report::document::Takeoff;

/// One row a kind of piece, in the order of the job's tiles.
pub fn spares(takeoff: &Takeoff) -> Table<'_> {
    Table::from_rows(takeoff.spares.iter().collect())
        .text("tile", |of| of.tile.to_string())
        .whole("severed", |of| of.handled.severed)
        .whole("cut", |of| of.handled.cut)
        .whole("removed", |of| of.handled.removed)
        .whole("loosened", |of| of.handled.loosened)
        .whole("walked", |of| of.handled.walked)
        .number("service_level_share", |_| takeoff.service_level)
        .whole("used_at_level", |of| of.spares.used_at_level)
        .whole("for_severed", |of| of.spares.for_severed)
        .whole("on_hand", |of| of.spares.on_hand)
        .whole("hidden", |of| of.salvageable)
        .whole("harvested", |of| of.spares.harvested)
        .whole("spares", |of| of.spares.spares)
        .number_if_any("expected_tiles", |of| of.spares.expected)
        .number("chance_short_share", |of| of.spares.stockout_probability)
        .whole_if_any("least_cost_spares", |of| of.least_cost.as_ref().map(|least| least.spares))
        .number_if_any("cost_ratio_share", |of| of.least_cost.as_ref().map(|least| least.cost_ratio))
        .number_if_any("weight_g", |of| of.weight_g)
        .done()
}
