//! A table as comma-separated text.
use std::borrow::Cow;

use super::super::plain;
use super::table::{Table, Values};

impl Table<'_> {
    /// The table as CSV: RFC 4180 (commas, CRLF, quotes where needed), one header row, `.` as decimal
    /// mark, nothing where there is no value, `true` and `false`.
    ///
    /// Numbers have at most 15 significant digits and no exponent: every reader gets back the same
    /// numbers.
    ///
    /// Text with a semicolon or a tab is quoted as well, since some spreadsheets split at those.
    ///
    /// A spreadsheet runs a cell that begins with `=`, `+`, `-` or `@` (full-width ones too) as a formula.
    /// Such text gets an apostrophe in front of that character, by which spreadsheets know plain text; other
    /// readers see the apostrophe. The same holds behind each comma, semicolon, tab, quote and line break
    /// inside a text: a spreadsheet that splits rows in another way may begin a cell there. Text that begins
    /// with a tab or a carriage return gets an apostrophe, too. Numbers are left alone.
    pub fn csv(&self) -> String {
        let mut text = String::new();
        let names = self.columns().iter().map(|column| column.name.into());
        add_row(&mut text, names);
        for row in 0..self.rows() {
            add_row(&mut text, self.columns().iter().map(|column| column.values.cell(row)));
        }
        text
    }
}

fn add_row<'a>(text: &mut String, cells: impl Iterator<Item = Cow<'a, str>>) {
    for (column, cell) in cells.enumerate() {
        if column > 0 {
            text.push(',');
        }
        if cell.contains([',', ';', '\t', '"', '\r', '\n']) {
            text.extend(["\"", &cell.replace('"', "\"\""), "\""]);
        } else {
            text.push_str(&cell);
        }
    }
    text.push_str("\r\n");
}

impl Values<'_> {
    /// The text of one cell; nothing where there is no value.
    fn cell(&self, row: usize) -> Cow<'_, str> {
        let text = match self {
            Values::Text(texts) => texts.get(row).and_then(|text| text.as_deref().map(neutralised)),
            Values::Number(numbers) => numbers.get(row).and_then(|n| n.map(|n| plain::number(n).into())),
            Values::Money(amounts) => amounts.get(row).and_then(|n| n.map(|n| n.to_string().into())),
            Values::Whole(numbers) => numbers.get(row).and_then(|n| n.map(|n| n.to_string().into())),
            Values::Flag(flags) => flags.get(row).and_then(|flag| flag.map(|flag| flag.to_string().into())),
        };
        text.unwrap_or_default()
    }
}

/// The text, with an apostrophe wherever a spreadsheet could take what follows for a formula.
fn neutralised(text: &str) -> Cow<'_, str> {
    const RUNS: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];
    let breaks = text.starts_with(['\t', '\r']);
    if !breaks && !text.contains(RUNS) {
        return text.into();
    }
    let mut plain = String::from(if breaks { "'" } else { "" });
    let mut may_begin = true;
    for c in text.chars() {
        if may_begin && RUNS.contains(&c) {
            plain.push('\'');
        }
        plain.push(c);
        may_begin = matches!(c, ',' | ';' | '\t' | '"' | '\r' | '\n') || may_begin && c == ' ';
    }
    plain.into()
}
