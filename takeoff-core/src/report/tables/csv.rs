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
    /// A spreadsheet runs a text that begins with `=`, `+`, `-`, `@`, tab or carriage return as a
    /// formula. Such texts get an apostrophe in front, by which spreadsheets know plain text; other
    /// readers see the apostrophe. Numbers are left alone.
    #[expect(clippy::expect_used, reason = "memory takes every byte, and the text went in as UTF-8")]
    pub fn csv(&self) -> String {
        let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
        self.write(&mut writer).expect("all columns are equally long");
        String::from_utf8(writer.into_inner().expect("memory takes every byte")).expect("text is UTF-8")
    }

    fn write(&self, writer: &mut csv::Writer<Vec<u8>>) -> csv::Result<()> {
        writer.write_record(self.columns().iter().map(|column| column.name))?;
        for row in 0..self.rows() {
            for column in self.columns() {
                writer.write_field(column.values.cell(row).as_ref())?;
            }
            writer.write_record(None::<&[u8]>)?;
        }
        Ok(())
    }
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

/// The text, with an apostrophe in front where a spreadsheet would take it for a formula.
fn neutralised(text: &str) -> Cow<'_, str> {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{text}").into() } else { text.into() }
}
