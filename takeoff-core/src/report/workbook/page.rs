//! One sheet in the making.
use std::collections::BTreeMap;

use Head::{Numbers, Words};
use rust_xlsxwriter::{Formula, Worksheet, XlsxError, row_col_to_cell, row_col_to_cell_absolute};

use super::styles::Look;
use super::{Book, Sheet};
use crate::model::Display;
use crate::report::plain::{printable, wrap};

/// Most characters in a cell; a spreadsheet allows 32 767.
const LONGEST_TEXT: usize = 32_000;
/// Most characters in a page's header or footer; a spreadsheet allows 255 with its codes.
const LONGEST_HEAD: usize = 100;
/// Height of a line of text, points.
const LINE: f64 = 15.0;
/// Most lines in a row; a spreadsheet allows 409 points.
const MOST_LINES: u32 = 27;

/// The head of a column, which stands over what is in it: words on the left, numbers on the right.
#[derive(Clone, Copy, Debug)]
pub(super) enum Head<'h> {
    Words(&'h str),
    Numbers(&'h str),
}

/// Content of a cell.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Cell {
    /// Nothing.
    Blank,
    /// Words, never read as a formula.
    Text(String),
    /// A number.
    Number(f64),
    /// A formula, and the result that the takeoff has for it.
    Formula(String, f64),
    /// A formula that goes through many values at once, and its one result.
    Array(String, f64),
    /// A formula whose result is words.
    Told(String, String),
}

/// A sheet that is filled row by row; what other sheets use of it gets a name.
pub(super) struct Page<'b> {
    name: &'static str,
    sheet: Worksheet,
    book: &'b Book<'b>,
    widths: Vec<f64>,
    /// Height of each row so far, in lines of text.
    lines: BTreeMap<u32, u32>,
    names: Vec<(String, String)>,
}

impl<'b> Page<'b> {
    /// An empty sheet with columns of these widths, in letters: landscape, as wide as the paper, Letter or A4.
    pub(super) fn new(book: &'b Book<'_>, name: &'static str, widths: &[f64]) -> Result<Page<'b>, XlsxError> {
        let mut sheet = Worksheet::new();
        let paper = match book.takeoff.display {
            Display::Imperial => 1,
            Display::Metric => 9,
        };
        sheet.set_name(name)?.set_paper_size(paper).set_landscape().set_print_fit_to_pages(1, 0);
        sheet.set_margins(0.5, 0.5, 0.7, 0.7, 0.3, 0.3).set_screen_gridlines(false);
        for (column, &width) in (0..).zip(widths) {
            sheet.set_column_width(column, width)?;
        }
        Ok(Page { name, sheet, book, widths: widths.to_vec(), lines: BTreeMap::new(), names: Vec::new() })
    }

    /// Fills a cell.
    pub(super) fn put(
        &mut self,
        row: u32,
        column: u16,
        look: Look,
        cell: impl Into<Cell>,
    ) -> Result<(), XlsxError> {
        let format = self.book.styles.format(look);
        let cell = cell.into();
        let lines = match &cell {
            Cell::Text(text) if look.wraps() => {
                lines(text, self.widths.get(usize::from(column)).copied(), look)
            }
            _ => 1,
        };
        self.takes(row, lines);
        match cell {
            Cell::Blank => self.sheet.write_blank(row, column, format)?,
            Cell::Text(text) => {
                self.sheet.write_string_with_format(row, column, fitting(&text, LONGEST_TEXT), format)?
            }
            Cell::Number(number) => self.sheet.write_number_with_format(row, column, number, format)?,
            Cell::Formula(formula, result) => {
                let formula = Formula::new(formula).set_result(result.to_string());
                self.sheet.write_formula_with_format(row, column, formula, format)?
            }
            Cell::Array(formula, result) => {
                let formula = Formula::new(formula).set_result(result.to_string());
                self.sheet.write_array_formula_with_format(row, column, row, column, formula, format)?
            }
            Cell::Told(formula, result) => {
                let formula = Formula::new(formula).set_result(result);
                self.sheet.write_formula_with_format(row, column, formula, format)?
            }
        };
        Ok(())
    }

    /// Words in the cells of a row, from the left.
    pub(super) fn texts<const N: usize>(&mut self, row: u32, texts: [&str; N]) -> Result<(), XlsxError> {
        (0..).zip(texts).try_for_each(|(column, text)| self.put(row, column, Look::Text, text))
    }

    /// Fills the cells of a row, from the left.
    pub(super) fn row<const N: usize>(
        &mut self,
        row: u32,
        cells: [(Look, Cell); N],
    ) -> Result<(), XlsxError> {
        (0..).zip(cells).try_for_each(|(column, (look, cell))| self.put(row, column, look, cell))
    }

    /// The heads of columns, which stay in sight on screen and stand on every printed page.
    pub(super) fn heads(&mut self, row: u32, heads: &[Head<'_>]) -> Result<(), XlsxError> {
        self.heads_here(row, heads)?;
        self.sheet.set_freeze_panes(row + 1, 0)?.set_repeat_rows(row, row)?;
        Ok(())
    }

    /// Column heads within a sheet; the columns to their right are blank.
    pub(super) fn heads_here(&mut self, row: u32, heads: &[Head<'_>]) -> Result<(), XlsxError> {
        let blank = std::iter::repeat(&Words(""));
        for (column, head) in (0..=self.last_column()).zip(heads.iter().chain(blank)) {
            match head {
                Words(head) => self.put(row, column, Look::Head, *head)?,
                Numbers(head) => self.put(row, column, Look::NumberHead, *head)?,
            }
        }
        Ok(())
    }

    /// A paragraph across all columns, as high as it needs.
    pub(super) fn paragraph(&mut self, row: u32, look: Look, text: &str) -> Result<(), XlsxError> {
        let text = fitting(text, LONGEST_TEXT);
        self.takes(row, lines(&text, Some(self.widths.iter().sum()), look));
        self.sheet.merge_range(row, 0, row, self.last_column(), &text, self.book.styles.format(look))?;
        Ok(())
    }

    /// Makes a row at least so many lines high.
    fn takes(&mut self, row: u32, lines: u32) {
        let most = self.lines.entry(row).or_default();
        *most = lines.max(*most);
    }

    /// Gives a cell a name by which formulas on every sheet call it.
    pub(super) fn name(&mut self, name: impl Into<String>, row: u32, column: u16) {
        let cell = row_col_to_cell_absolute(row, column);
        self.names.push((name.into(), format!("={}!{cell}", self.name)));
    }

    /// Gives the cells from `first` to `last` of a column a name.
    pub(super) fn name_range(&mut self, name: impl Into<String>, first: u32, last: u32, column: u16) {
        let (first, last) = (row_col_to_cell_absolute(first, column), row_col_to_cell_absolute(last, column));
        self.names.push((name.into(), format!("={}!{first}:{last}", self.name)));
    }

    fn last_column(&self) -> u16 {
        (self.widths.len() as u16).saturating_sub(1)
    }

    /// Sets what is printed, with the job's name over it, and hands over the sheet with its names.
    pub(super) fn done(mut self) -> Result<Sheet, XlsxError> {
        // In heads and feet `&` begins a code.
        let job = fitting(&self.book.takeoff.job, LONGEST_HEAD).replace('&', "&&");
        for (&row, &lines) in self.lines.iter().filter(|(_, lines)| **lines > 1) {
            self.sheet.set_row_height(row, LINE * f64::from(lines.min(MOST_LINES)))?;
        }
        let last_row = self.lines.last_key_value().map_or(0, |(row, _)| *row);
        self.sheet.set_print_area(0, 0, last_row, self.last_column())?;
        self.sheet
            .set_header(format!("&L{job}&R&A"))
            .set_footer("&LAn estimate, not a design&RPage &P of &N");
        Ok((self.sheet, self.names))
    }
}

/// The cell's name in formulas on its own sheet: `C5`.
pub(super) fn at(row: u32, column: u16) -> String {
    row_col_to_cell(row, column)
}

/// Number of lines of a text in a column of `width` characters; bold letters are wider, and words stand apart by one.
fn lines(text: &str, width: Option<f64>, look: Look) -> u32 {
    let bold = matches!(look, Look::Head | Look::NumberHead | Look::Caution);
    let width = width.unwrap_or(f64::INFINITY) * if bold { 0.9 } else { 1.0 } - 1.0;
    wrap("", "", text, (width as usize).max(1)).len() as u32
}

/// Text that a workbook can hold: without control characters, not too long.
fn fitting(text: &str, longest: usize) -> String {
    let text = printable(text);
    if text.chars().count() <= longest {
        return text;
    }
    text.chars().take(longest - 1).chain(['…']).collect()
}

impl From<&str> for Cell {
    fn from(text: &str) -> Cell {
        Cell::Text(text.to_owned())
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Cell {
        Cell::Text(text)
    }
}

impl From<f64> for Cell {
    fn from(number: f64) -> Cell {
        Cell::Number(number)
    }
}

impl From<u64> for Cell {
    fn from(count: u64) -> Cell {
        Cell::Number(count as f64)
    }
}

impl From<bool> for Cell {
    fn from(flag: bool) -> Cell {
        if flag { "yes".into() } else { Cell::Blank }
    }
}

impl<T: Into<Cell>> From<Option<T>> for Cell {
    fn from(value: Option<T>) -> Cell {
        value.map_or(Cell::Blank, Into::into)
    }
}
