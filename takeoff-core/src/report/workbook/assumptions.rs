//! The sheet of what is assumed, what is odd, what was not asked, and the cautions.
use rust_xlsxwriter::XlsxError;

use super::page::Head::Words;
use super::page::Page;
use super::styles::Look;
use super::{Book, Sheet};

/// Assumptions behind the numbers.
pub(super) fn assumptions(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let mut page = Page::new(book, "assumptions", &[60.0, 40.0, 34.0])?;
    page.put(0, 0, Look::Title, format!("{}: assumptions", takeoff.job))?;
    page.paragraph(
        1,
        Look::Note,
        "What the numbers rest on. Change it in the job file: these are no inputs.",
    )?;
    page.heads(2, &[Words("what is assumed"), Words("value, with its unit"), Words("where it comes from")])?;
    let mut row = 3;
    for assumption in &takeoff.assumptions {
        let source =
            if assumption.set_by_job { "the job file" } else { "usual practice, left alone by the job file" };
        page.texts(row, [&assumption.what, &assumption.value, source])?;
        row += 1;
    }
    row += 1;
    page.heads_here(
        row,
        &[Words("findings: check before ordering"), Words("fix"), Words("where in the job file")],
    )?;
    row += 1;
    if takeoff.findings.is_empty() {
        page.texts(row, ["none"])?;
        row += 1;
    }
    for finding in &takeoff.findings {
        page.texts(row, [&finding.message, &finding.help, &finding.path])?;
        row += 1;
    }
    row += 1;
    page.heads_here(row, &[Words("survey"), Words("answer")])?;
    row += 1;
    for answer in &takeoff.survey {
        let given = answer.answer.as_deref().filter(|text| !text.trim().is_empty());
        page.texts(row, [&answer.asks, given.unwrap_or("not asked yet")])?;
        row += 1;
    }
    row += 1;
    page.heads_here(row, &[Words("cautions")])?;
    for caution in &takeoff.cautions {
        row += 1;
        page.paragraph(row, Look::Text, caution)?;
    }
    page.done()
}
