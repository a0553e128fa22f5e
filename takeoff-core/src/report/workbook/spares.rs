//! The sheet of spare tiles: the distribution of breakage, and the number for the service level over it.
use rust_xlsxwriter::XlsxError;

use super::page::Head::{Numbers, Words};
use super::page::{Cell, Page, at};
use super::styles::{Kind, Look};
use super::{Book, Sheet};
use crate::spares::{Spares, TileSpares};

/// The chance, of running short, at which the list of a kind ends.
const TAIL: f64 = 1e-9;
/// Rows of a kind's list at most, for a roof of very many tiles.
const MOST_ROWS: u64 = 2_000;
/// Columns: what is counted, how many, with which probabilities.
const COUNT: u16 = 1;
const ENOUGH: u16 = 2;
const SHORT: u16 = 3;

/// Spares by kind of piece, and below them how likely each number is enough.
pub(super) fn spares(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let widths = [26.0, 12.0, 14.0, 14.0, 10.0, 10.0, 10.0, 12.0, 12.0, 12.0, 12.0, 12.0];
    let mut page = Page::new(book, "spares", &widths)?;
    page.put(0, 0, Look::Title, format!("{}: spare tiles", takeoff.job))?;
    page.paragraph(
        1,
        Look::Note,
        "Yellow cells with a border are inputs; the service level is one too, on the sheet `summary`. Spares for \
         breakage: the least s with P(X ≤ s) + 1e-12 ≥ service level in the list below, X being the spares that \
         breakage uses. #N/A: the service level lies beyond the list; take the roof off again.",
    )?;
    page.heads(
        2,
        &[
            Words("tile"),
            Numbers("for breakage (tiles)"),
            Numbers("to replace tiles that can't be cut (tiles)"),
            Numbers("on hand (tiles)"),
            Numbers("from under arrays (tiles)"),
            Numbers("to buy (tiles)"),
            Numbers("chance of running short"),
            Numbers("handled: replaced (tiles)"),
            Numbers("cut (tiles)"),
            Numbers("removed (tiles)"),
            Numbers("raised (tiles)"),
            Numbers("walked on (tiles)"),
        ],
    )?;
    let kinds = takeoff.spares.len() as u32;
    let mut first = 3 + kinds + 2;
    page.heads_here(
        first - 1,
        &[
            Words("tile"),
            Numbers("spares s (tiles)"),
            Numbers("enough: P(X ≤ s)"),
            Numbers("short: P(X > s)"),
        ],
    )?;
    for ((row, of_kind), key) in (3..).zip(&takeoff.spares).zip(&book.tile_keys) {
        let listed = listed(&of_kind.spares);
        let last = first + (listed.end() - listed.start()) as u32;
        kind(&mut page, row, of_kind, first..=last, listed.clone())?;
        page.name(format!("spares_{key}"), row, 5);
        page.name(format!("on_hand_{key}"), row, 3);
        page.name(format!("harvested_{key}"), row, 4);
        page.name_range(format!("enough_{key}"), first, last, ENOUGH);
        for (row, s) in (first..).zip(listed) {
            let distribution = &of_kind.spares.distribution;
            page.put(row, 0, Look::Text, of_kind.tile.to_string())?;
            page.put(row, COUNT, Look::Number(Kind::Count), s)?;
            page.put(row, ENOUGH, Look::Number(Kind::Chance), distribution.cdf(s))?;
            page.put(row, SHORT, Look::Number(Kind::Chance), distribution.chance_above(s))?;
        }
        first = last + 1;
    }
    page.done()
}

/// The line of one kind, whose list stands in these rows.
fn kind(
    page: &mut Page<'_>,
    row: u32,
    of_kind: &TileSpares,
    rows: std::ops::RangeInclusive<u32>,
    listed: std::ops::RangeInclusive<u64>,
) -> Result<(), XlsxError> {
    let TileSpares { tile, handled, spares, .. } = of_kind;
    let (start, end) = (*rows.start(), *rows.end());
    let column = |column| format!("{}:{}", at(start, column), at(end, column));
    let (counts, enough, short) = (at(start, COUNT), column(ENOUGH), column(SHORT));
    let beyond = format!(
        "OR(service_level>{}+1E-12,AND({counts}>0,service_level<{}))",
        at(end, ENOUGH),
        at(start, ENOUGH)
    );
    let [used, severed, on_hand, harvested, buy] = [1, 2, 3, 4, 5].map(|column| at(row, column));
    // What is left for breakage, up to where the list ends: beyond it the chance is no greater.
    let left = format!("MIN({},{buy}+{on_hand}+{harvested}-{severed})", at(end, COUNT));
    let count = Look::Number(Kind::Count);
    let all = spares.spares + spares.on_hand + spares.harvested;
    let for_breakage = (all - spares.for_severed.min(all)).min(*listed.end());
    let chance = spares.distribution.chance_above(for_breakage);
    page.row(
        row,
        [
            (Look::Text, tile.to_string().into()),
            (
                count,
                Cell::Formula(
                    format!("=IF({beyond},NA(),{counts}+SUMPRODUCT(--({enough}+1E-12<service_level)))"),
                    spares.used_at_level as f64,
                ),
            ),
            (count, spares.for_severed.into()),
            (Look::Input(Kind::Count), spares.on_hand.into()),
            (Look::Input(Kind::Count), spares.harvested.into()),
            (
                Look::Result(Kind::Count),
                Cell::Formula(
                    format!("=MAX(0,{used}+{severed}-{on_hand}-{harvested})"),
                    spares.spares as f64,
                ),
            ),
            (Look::Number(Kind::Chance), Cell::Formula(format!("=INDEX({short},{left}-{counts}+1)"), chance)),
            (count, handled.severed.into()),
            (count, handled.cut.into()),
            (count, handled.removed.into()),
            (count, handled.loosened.into()),
            (count, handled.walked.into()),
        ],
    )
}

/// The numbers of spares that are listed: from none, or where there are very many from where they begin to matter, up
/// to where the chance of running short is next to nothing.
fn listed(spares: &Spares) -> std::ops::RangeInclusive<u64> {
    let distribution = &spares.distribution;
    let end = distribution.quantile(1.0 - TAIL).map_or(u64::MAX, |end| end.max(spares.used_at_level));
    if end < MOST_ROWS {
        return 0..=end;
    }
    let start = spares.used_at_level.saturating_sub(MOST_ROWS / 2);
    start..=end.min(start + MOST_ROWS)
}
