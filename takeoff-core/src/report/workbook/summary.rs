//! The first sheet: what it costs, what was counted, cautions, and who answers for it.
use rust_xlsxwriter::XlsxError;

use super::page::Head::{Numbers, Words};
use super::page::{Cell, Page};
use super::styles::{Kind, Look};
use super::{Book, Sheet, amount};
use crate::pricing::{Bid, BidTotals};
use crate::report::document::Takeoff;
use crate::report::quantity::Quantities;
use crate::report::totals::totals;

/// The summary, to be signed.
pub(super) fn summary(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let mut page = Page::new(book, "summary", &[54.0, 16.0, 18.0, 46.0])?;
    page.put(0, 0, Look::Title, takeoff.job.as_str())?;
    page.paragraph(
        1,
        Look::Note,
        "Posts through a tile roof. Yellow cells with a border are inputs, here and on the other sheets: change one \
         and everything recalculates. Counts from the roof come from the takeoff and stay.",
    )?;
    page.put(2, 0, Look::Text, "chance that the spares suffice")?;
    page.put(2, 1, Look::Input(Kind::Share), takeoff.service_level)?;
    page.name("service_level", 2, 1);
    let mut row = match &takeoff.bid {
        Some(bid) => cost(&mut page, 4, book, bid)?,
        None => 4,
    };
    row = approval(&mut page, row)?;
    row = slopes(&mut page, row + 1, takeoff)?;
    row = counts(&mut page, row + 1, takeoff)?;
    cautions(&mut page, row + 1, takeoff)?;
    page.done()
}

/// From the materials to the price, each line rounded; gives the row after it.
fn cost(page: &mut Page<'_>, first: u32, book: &Book<'_>, bid: &Bid) -> Result<u32, XlsxError> {
    let head = format!("amount ({})", bid.currency);
    page.heads_here(first, &[Words("price"), Numbers("share (%)"), Numbers(&head), Words("how")])?;
    let BidTotals { materials, tax_share, tax, labour, direct_cost, contingency_share, contingency, .. } =
        &bid.totals;
    let labour_total = if bid.labour_rate_per_hour.is_some() { "labour_total" } else { "0" };
    // What it is, its share, how it is computed, what it is called, how much it is, and the same in words.
    let lines = [
        ("materials", None, "materials_total", "materials_cost", materials, "the sheet `order`"),
        ("tax", Some(tax_share), "materials_cost*tax", "tax_amount", tax, "a share of the materials"),
        ("labour", None, labour_total, "labour_cost", labour, "the sheet `labour`"),
        (
            "direct cost",
            None,
            "materials_cost+tax_amount+labour_cost",
            "direct_cost",
            direct_cost,
            "materials, tax, labour",
        ),
        (
            "contingency",
            Some(contingency_share),
            "direct_cost*contingency",
            "contingency_amount",
            contingency,
            "a share of the direct cost",
        ),
        (
            "markup",
            Some(&bid.totals.markup_share),
            "(direct_cost+contingency_amount)*markup",
            "markup_amount",
            &bid.totals.markup,
            "a share of direct cost and contingency",
        ),
        (
            "price",
            None,
            "direct_cost+contingency_amount+markup_amount",
            "price",
            &bid.totals.price,
            "direct cost, contingency, markup",
        ),
    ];
    let mut row = first;
    for (what, share, formula, name, result, how) in lines {
        row += 1;
        let money = if name == "price" { Look::Sum(Kind::Money) } else { Look::Number(Kind::Money) };
        page.put(row, 0, Look::Text, what)?;
        if let Some(share) = share {
            page.put(row, 1, Look::Input(Kind::Share), *share)?;
            page.name(what, row, 1);
        }
        let formula = format!("=ROUND({formula},{})", book.decimals);
        page.put(row, 2, money, Cell::Formula(formula, amount(*result)))?;
        page.name(name, row, 2);
        page.put(row, 3, Look::Text, how)?;
    }
    page.paragraph(row + 1, Look::Note, &format!("Rounding: {}.", bid.rounding))?;
    let unpriced: Vec<String> = bid.unpriced.iter().map(|line| line.item.name()).collect();
    if !unpriced.is_empty() {
        let text = format!("Without a price, in no total: {}.", unpriced.join(", "));
        page.paragraph(row + 2, Look::Caution, &text)?;
    }
    let untimed = bid.labour.iter().filter(|line| line.cost.is_none());
    let untimed: Vec<&str> = untimed.map(|line| line.action.words()).collect();
    if !untimed.is_empty() {
        page.paragraph(row + 3, Look::Caution, &format!("Not timed, in no total: {}.", untimed.join(", ")))?;
    }
    Ok(row + 4)
}

/// A line a slope.
fn slopes(page: &mut Page<'_>, mut row: u32, takeoff: &Takeoff) -> Result<u32, XlsxError> {
    let shown = Quantities(takeoff.display);
    page.heads_here(row, &[Words("slope"), Words("pitch"), Numbers("posts"), Words("area on the slope")])?;
    for slope in &takeoff.slopes {
        row += 1;
        page.texts(row, [&slope.name, &slope.pitch])?;
        page.put(row, 2, Look::Number(Kind::Count), slope.posts.len() as u64)?;
        page.put(row, 3, Look::Text, shown.area(slope.area_mm2))?;
    }
    Ok(row + 1)
}

/// Counts, grouped by kind.
fn counts(page: &mut Page<'_>, mut row: u32, takeoff: &Takeoff) -> Result<u32, XlsxError> {
    for totals in totals(takeoff) {
        page.heads_here(row, &[Words(&totals.head), Numbers("count")])?;
        row += 1;
        for (count, what) in &totals.counts {
            page.put(row, 0, Look::Text, what.as_str())?;
            page.put(row, 1, Look::Number(Kind::Count), *count)?;
            row += 1;
        }
        for note in &totals.notes {
            page.paragraph(row, Look::Note, note)?;
            row += 1;
        }
    }
    Ok(row)
}

/// Warnings.
fn cautions(page: &mut Page<'_>, mut row: u32, takeoff: &Takeoff) -> Result<(), XlsxError> {
    page.heads_here(row, &[Words("cautions")])?;
    row += 1;
    let findings = takeoff.findings.len();
    if findings > 0 {
        let text = format!("Findings: {findings}. Check the sheet `assumptions` before ordering.");
        page.paragraph(row, Look::Caution, &text)?;
        row += 1;
    }
    for caution in &takeoff.cautions {
        page.paragraph(row, Look::Text, caution)?;
        row += 1;
    }
    Ok(())
}

/// Lines to be signed.
fn approval(page: &mut Page<'_>, mut row: u32) -> Result<u32, XlsxError> {
    page.heads_here(row, &[Words("approval")])?;
    for who in ["prepared by", "approved by"] {
        row += 2;
        page.put(row, 0, Look::Blank, who)?;
        page.put(row, 1, Look::Blank, "")?;
        page.put(row, 2, Look::Blank, "date")?;
        page.put(row, 3, Look::Blank, "")?;
    }
    Ok(row + 1)
}
