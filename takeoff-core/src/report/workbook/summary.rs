//! The first sheet: what it costs, what was counted, cautions, and who answers for it.
use rust_xlsxwriter::XlsxError;

use super::page::Head::{Numbers, Words};
use super::page::Page;
use super::styles::{Kind, Look};
use super::{Book, Sheet};
use crate::report::quantity::Quantities;
use crate::report::totals::totals;
use crate::takeoff::Takeoff;

/// The summary, to be signed.
pub(super) fn summary(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let mut page = Page::new(book, "summary", &[44.0, 16.0, 18.0, 50.0])?;
    page.put(0, 0, Look::Title, takeoff.job.as_str())?;
    page.paragraph(
        1,
        Look::Note,
        "Posts through a tile roof. Yellow cells with a border are inputs, here and on the other sheets: change one \
         and everything recalculates. What was counted on the roof comes from the takeoff and does not.",
    )?;
    let mut row = 3;
    page.put(row, 0, Look::Text, "service level: spare tiles are enough with this probability")?;
    page.put(row, 1, Look::Input(Kind::Share), takeoff.service_level)?;
    page.name("service_level", row, 1);
    row = slopes(&mut page, row + 2, takeoff)?;
    row = counts(&mut page, row + 1, takeoff)?;
    row = cautions(&mut page, row + 1, takeoff)?;
    approval(&mut page, row + 1)?;
    page.done()
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

/// What was counted, by what it is about.
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

/// What must not be overlooked.
fn cautions(page: &mut Page<'_>, mut row: u32, takeoff: &Takeoff) -> Result<u32, XlsxError> {
    page.heads_here(row, &[Words("cautions")])?;
    row += 1;
    let findings = takeoff.findings.len();
    if findings > 0 {
        let text =
            format!("Findings: {findings}. Odd but real: look at the sheet `assumptions` before you order.");
        page.paragraph(row, Look::Caution, &text)?;
        row += 1;
    }
    for caution in &takeoff.cautions {
        page.paragraph(row, Look::Text, caution)?;
        row += 1;
    }
    Ok(row)
}

/// Lines to be signed.
fn approval(page: &mut Page<'_>, mut row: u32) -> Result<(), XlsxError> {
    page.heads_here(row, &[Words("approval")])?;
    for who in ["prepared by", "approved by"] {
        row += 2;
        page.put(row, 0, Look::Blank, who)?;
        page.put(row, 1, Look::Blank, "")?;
        page.put(row, 2, Look::Blank, "date")?;
        page.put(row, 3, Look::Blank, "")?;
    }
    Ok(())
}
