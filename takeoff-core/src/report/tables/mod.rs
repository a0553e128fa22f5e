//! The tables of a takeoff: what to bring, the posts, the cuts, the tiles handled, the felt patches and how they are cut,
//! the spare tiles, the screening of the lags.
//!
//! A column's name ends in its unit (`u_mm`, `area_mm2`); a column without one beside it (`u`) shows the
//! same in the units of the job, for people. Rows are keyed by names: slope and post, slope and tile.
mod bid;
mod csv;
mod cuts;
mod cutting;
mod labour;
mod layout;
mod materials;
mod packs;
mod patches;
mod posts;
mod screening;
mod spares;
mod table;
#[cfg(test)]
mod tests;
mod tiles;

use super::document::{SlopeTakeoff, Takeoff};

pub use bid::bid;
pub use cuts::cuts;
pub use cutting::cutting;
pub use labour::labour;
pub use layout::layout;
#[cfg(feature = "workbook")]
pub(super) use materials::basis;
pub(crate) use materials::brought;
pub use materials::{materials, ordered};
pub use packs::packs;
pub use patches::patches;
pub use posts::posts;
pub use screening::screening;
pub use spares::spares;
pub use table::{Column, Table, Values};
pub use tiles::tiles;

/// Every table by name, as it is called as a file; screening, bid and labour where there are any.
pub fn all(takeoff: &Takeoff) -> Vec<(&'static str, Table<'_>)> {
    let mut tables = vec![
        ("materials", materials(takeoff)),
        ("posts", posts(takeoff)),
        ("cuts", cuts(takeoff)),
        ("tiles", tiles(takeoff)),
        ("patches", patches(takeoff)),
        ("cutting", cutting(takeoff)),
        ("spares", spares(takeoff)),
    ];
    tables.extend(takeoff.screening.as_ref().map(|_| ("screening", screening(takeoff))));
    if let Some(bid) = &takeoff.bid {
        tables.push(("bid", self::bid(takeoff)));
        tables.extend(bid.labour_rate_per_hour.map(|_| ("labour", labour(takeoff))));
    }
    tables
}

/// The things of a slope, each with its slope, over all slopes.
fn with_slope<'a, T>(
    takeoff: &'a Takeoff,
    things: impl Fn(&'a SlopeTakeoff) -> &'a [T],
) -> Vec<(&'a SlopeTakeoff, &'a T)> {
    takeoff.slopes.iter().flat_map(|slope| things(slope).iter().map(move |thing| (slope, thing))).collect()
}

/// Several names in one cell.
fn listed(names: &[String]) -> String {
    names.join("; ")
}
