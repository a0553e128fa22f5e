//! A sheet of rows: one thing a row, one column at a time.
use rust_xlsxwriter::XlsxError;

use super::page::{Cell, Head, Page};
use super::styles::Look;
use super::{Book, Sheet};

/// Most rows in a sheet; a spreadsheet allows 1 048 576, a person reads fewer.
const MOST_ROWS: usize = 100_000;

/// A column of a sheet of rows.
pub(super) struct Column<'a, R> {
    head: String,
    width: f64,
    look: Look,
    cell: Box<dyn Fn(R) -> Cell + 'a>,
}

impl<'a, R> Column<'a, R> {
    /// A column with its head, which names the unit, its width in letters and what stands in it.
    pub(super) fn new<C: Into<Cell>>(
        head: impl Into<String>,
        width: f64,
        look: Look,
        cell: impl Fn(R) -> C + 'a,
    ) -> Column<'a, R> {
        Column { head: head.into(), width, look, cell: Box::new(move |row| cell(row).into()) }
    }

    fn head(&self) -> Head<'_> {
        match self.look {
            Look::Number(_) => Head::Numbers(&self.head),
            _ => Head::Words(&self.head),
        }
    }
}

/// A sheet of rows under a title and a note. Where there are more rows than a sheet holds, it says so and names the
/// table that has them all.
pub(super) fn sheet_of_rows<R: Copy>(
    book: &Book<'_>,
    name: &'static str,
    note: &str,
    rows: &[R],
    columns: Vec<Column<'_, R>>,
) -> Result<Sheet, XlsxError> {
    let widths: Vec<f64> = columns.iter().map(|column| column.width).collect();
    let mut page = Page::new(book, name, &widths)?;
    page.put(0, 0, Look::Title, format!("{}: {name}", book.takeoff.job))?;
    page.paragraph(1, Look::Note, note)?;
    page.heads(2, &columns.iter().map(Column::head).collect::<Vec<_>>())?;
    for (row, thing) in (3..).zip(rows.iter().take(MOST_ROWS)) {
        for (place, column) in (0..).zip(&columns) {
            page.put(row, place, column.look, (column.cell)(*thing))?;
        }
    }
    if let Some(more) = rows.len().checked_sub(MOST_ROWS).filter(|&more| more > 0) {
        let row = 3 + MOST_ROWS as u32;
        page.paragraph(
            row,
            Look::Caution,
            &format!("{more} more rows are in {name}.csv: this sheet is not whole."),
        )?;
    }
    page.done()
}
