//! A table by columns.
use std::borrow::Cow;

use crate::units::Money;

/// A table: columns of equal length, each of one type.
#[derive(Clone, Debug, PartialEq)]
pub struct Table<'a> {
    columns: Vec<Column<'a>>,
    rows: usize,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column<'a> {
    /// Its name, which ends in the unit of its numbers.
    pub name: &'static str,
    /// Cells, row by row; `None` for an empty one.
    pub values: Values<'a>,
}

/// The values of a column.
#[derive(Clone, Debug, PartialEq)]
pub enum Values<'a> {
    /// Words and names.
    Text(Vec<Option<Cow<'a, str>>>),
    /// Measures.
    Number(Vec<Option<f64>>),
    /// Amounts of money, decimal.
    Money(Vec<Option<Money>>),
    /// Whole numbers.
    Whole(Vec<Option<i64>>),
    /// Yes or no.
    Flag(Vec<Option<bool>>),
}

impl<'a> Table<'a> {
    /// Its columns, left to right.
    pub fn columns(&self) -> &[Column<'a>] {
        &self.columns
    }

    /// Number of rows.
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// A table to be filled column by column from these rows.
    pub(super) fn from_rows<R: Copy>(rows: Vec<R>) -> Builder<'a, R> {
        Builder { rows, columns: Vec::new() }
    }
}

/// Fills a table: one call a column.
pub(super) struct Builder<'a, R> {
    rows: Vec<R>,
    columns: Vec<Column<'a>>,
}

impl<'a, R: Copy> Builder<'a, R> {
    /// A column of text.
    pub(super) fn text<T: Into<Cow<'a, str>>>(self, name: &'static str, cell: impl Fn(R) -> T) -> Self {
        self.text_if_any(name, |row| Some(cell(row)))
    }

    /// A column of text with gaps.
    pub(super) fn text_if_any<T: Into<Cow<'a, str>>>(
        self,
        name: &'static str,
        cell: impl Fn(R) -> Option<T>,
    ) -> Self {
        let values = self.rows.iter().map(|&row| cell(row).map(Into::into)).collect();
        self.push(name, Values::Text(values))
    }

    /// A column of measures.
    pub(super) fn number(self, name: &'static str, cell: impl Fn(R) -> f64) -> Self {
        self.number_if_any(name, |row| Some(cell(row)))
    }

    /// A column of measures with gaps.
    pub(super) fn number_if_any(self, name: &'static str, cell: impl Fn(R) -> Option<f64>) -> Self {
        let values = self.rows.iter().map(|&row| cell(row)).collect();
        self.push(name, Values::Number(values))
    }

    /// A column of amounts of money with gaps.
    pub(super) fn money_if_any(self, name: &'static str, cell: impl Fn(R) -> Option<Money>) -> Self {
        let values = self.rows.iter().map(|&row| cell(row)).collect();
        self.push(name, Values::Money(values))
    }

    /// A column of whole numbers.
    pub(super) fn whole<N: TryInto<i64>>(self, name: &'static str, cell: impl Fn(R) -> N) -> Self {
        self.whole_if_any(name, |row| Some(cell(row)))
    }

    /// A column of whole numbers with gaps.
    pub(super) fn whole_if_any<N: TryInto<i64>>(
        self,
        name: &'static str,
        cell: impl Fn(R) -> Option<N>,
    ) -> Self {
        let whole = |n: N| n.try_into().unwrap_or(i64::MAX);
        let values = self.rows.iter().map(|&row| cell(row).map(whole)).collect();
        self.push(name, Values::Whole(values))
    }

    /// A column of yes and no.
    pub(super) fn flag(self, name: &'static str, cell: impl Fn(R) -> bool) -> Self {
        self.flag_if_any(name, |row| Some(cell(row)))
    }

    /// A column of yes and no with gaps.
    pub(super) fn flag_if_any(self, name: &'static str, cell: impl Fn(R) -> Option<bool>) -> Self {
        let values = self.rows.iter().map(|&row| cell(row)).collect();
        self.push(name, Values::Flag(values))
    }

    /// The table.
    pub(super) fn done(self) -> Table<'a> {
        Table { rows: self.rows.len(), columns: self.columns }
    }

    fn push(mut self, name: &'static str, values: Values<'a>) -> Self {
        self.columns.push(Column { name, values });
        self
    }
}
