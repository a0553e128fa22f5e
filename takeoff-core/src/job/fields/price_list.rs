//! The price list: a CSV file of packs.
use std::borrow::Cow;
use std::collections::BTreeMap;

use rust_decimal::Decimal;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use super::money::{Currency, plain_decimal};
use super::table_field::{Cells, FileName, table};
use crate::job::parse::csv_table::Column;
use crate::job::parse::decode::{Read, Reader, listed, quoted};
use crate::job::parse::document::At;
use crate::model::{Code, PriceList, PriceRow};
use crate::units;
use crate::units::{Measure, Money, Unit, UnitError};

/// The name of a price list's file.
pub(crate) struct Prices;

impl JsonSchema for Prices {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        "Prices".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "minLength": 1, "examples": ["prices.csv"] })
    }
}

/// The columns, by their places in [`columns`].
const ITEM: usize = 0;
const UNIT: usize = 1;
const PACK: usize = 2;
const PRICE: usize = 3;
const CURRENCY: usize = 4;
const VENDOR_PART: usize = 5;
const MINIMUM_ORDER: usize = 6;

/// The most packs on offer for one item.
const MOST_PACKS: usize = 12;
/// The greatest minimum order.
const MOST_MINIMUM: u64 = 1_000_000;

fn columns() -> [Column; 7] {
    [
        Column::text("item"),
        Column::text("unit"),
        Column::number("pack"),
        Column::number("price"),
        Column::text("currency"),
        Column::text("vendor_part").optional(),
        Column::number("minimum_order").optional(),
    ]
}

impl Read for Prices {
    type Value = PriceList;
    const EXPECTS: &'static str = "a file name, such as `\"prices.csv\"`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<PriceList> {
        let file = FileName::read(at, reader)?;
        let sheet = table(at, &file, &columns(), reader)?;
        let mut list = Checked::default();
        let rows: Vec<Option<PriceRow>> = sheet
            .rows()
            .map(|row| {
                let mut cells = Cells::new(row, &file, at, reader);
                let row = price_row(&mut cells);
                let currency = currency(&mut cells);
                list.check(row.as_ref(), currency, &mut cells);
                row
            })
            .collect();
        if rows.is_empty() {
            let message = format!("{} has no row below its header", quoted(&file));
            reader.report(at, Code::BadCsv, message, "give a row for each pack on offer");
        }
        Some(PriceList { file, currency: list.currency?.0, rows: rows.into_iter().collect::<Option<_>>()? })
    }
}

/// Rules between the rows of a list.
#[derive(Default)]
struct Checked {
    /// The currency of the first row that has one, and its line.
    currency: Option<(units::Currency, u64)>,
    items: BTreeMap<String, Sold>,
}

/// Unit and packs of an item.
struct Sold {
    /// Unit of its first row, and that row's line.
    unit: Unit,
    line: u64,
    /// Its packs by size and vendor's part, each with its line.
    packs: BTreeMap<(Decimal, Option<String>), u64>,
}

impl Checked {
    fn check(
        &mut self,
        row: Option<&PriceRow>,
        currency: Option<units::Currency>,
        cells: &mut Cells<'_, '_, '_>,
    ) {
        let line = cells.row.line();
        match (&self.currency, currency) {
            (None, currency) => self.currency = currency.map(|currency| (currency, line)),
            (Some((first, before)), Some(currency)) if *first != currency => {
                let (first, currency) = (quoted(first.code()), quoted(currency.code()));
                let message = format!("the price is in {currency}, and that of line {before} in {first}");
                cells.refuse(CURRENCY, Code::TwoCurrencies, message, "give all prices in one currency");
            }
            _ => {}
        }
        let Some(row) = row else { return };
        let first = Sold { unit: row.unit, line, packs: BTreeMap::new() };
        let sold = self.items.entry(row.item.clone()).or_insert(first);
        let item = quoted(&row.item);
        if sold.unit != row.unit {
            let message = format!("{item} is sold in a unit of another kind in line {}", sold.line);
            let help = "give all packs of an item by piece, by area, by length or by volume";
            cells.refuse(UNIT, Code::UnitOfItem, message, help);
            return;
        }
        let pack = (row.size.normalize(), row.vendor_part.clone());
        if let Some(before) = sold.packs.insert(pack, line) {
            let message = format!("{item} in packs of {} stands in line {before} too", row.shown);
            let help = "take one of the two rows out, or tell them apart by `vendor_part`";
            cells.refuse(PACK, Code::DuplicateRow, message, help);
        } else if sold.packs.len() > MOST_PACKS {
            let message = format!("{item} has more than {MOST_PACKS} packs");
            cells.refuse(ITEM, Code::TooMany, message, "leave out packs that nobody buys");
        }
    }
}

/// The pack that a row offers, its currency apart; what is wrong is reported.
fn price_row(cells: &mut Cells<'_, '_, '_>) -> Option<PriceRow> {
    let item = if is_text(ITEM, cells) { cells.name(ITEM) } else { None };
    let measure = measure(cells);
    let pack = pack(measure, cells);
    let price = positive(PRICE, cells, true);
    let vendor_part = vendor_part(cells);
    let minimum_order = minimum_order(cells);
    let (measure, pack) = (measure?, pack?);
    Some(PriceRow {
        item: item?,
        unit: measure.unit,
        size: measure.size * pack,
        shown: format!("{} {}", pack.normalize(), cells.row.text(UNIT)),
        price: Money::new(price?),
        minimum_order: minimum_order?,
        vendor_part: vendor_part?,
        line: cells.row.line(),
    })
}

/// The vendor's name for the pack, if the row has one.
fn vendor_part(cells: &mut Cells<'_, '_, '_>) -> Option<Option<String>> {
    if !is_text(VENDOR_PART, cells) {
        return None;
    }
    if cells.row.text(VENDOR_PART).is_empty() {
        return Some(None);
    }
    cells.name(VENDOR_PART).map(Some)
}

fn currency(cells: &mut Cells<'_, '_, '_>) -> Option<units::Currency> {
    let text = if is_text(CURRENCY, cells) { cells.row.text(CURRENCY) } else { return None };
    cells.read(CURRENCY, |at, reader| Currency::check(text, at, reader))
}

fn measure(cells: &mut Cells<'_, '_, '_>) -> Option<Measure> {
    let text = if is_text(UNIT, cells) { cells.row.text(UNIT) } else { return None };
    let measure = Measure::of(text);
    if measure.is_none() {
        let known: Vec<&str> = Measure::names().collect();
        let code = "unit-unknown";
        let message = format!("the unit {} is not known here", quoted(text));
        let help = format!("write one of {}", listed(&known));
        cells.read(UNIT, |at, reader| reader.report_unit(at, UnitError { code, message, help }));
    }
    measure
}

/// Content of a pack: above zero, and whole pieces.
fn pack(measure: Option<Measure>, cells: &mut Cells<'_, '_, '_>) -> Option<Decimal> {
    let pack = positive(PACK, cells, false)?;
    if measure?.unit == Unit::Each && !pack.fract().is_zero() {
        let message = format!("a pack of {pack} is not of whole pieces");
        cells.refuse(PACK, Code::OutOfRange, message, "write how many pieces are in a pack, as `100`");
        return None;
    }
    Some(pack)
}

fn minimum_order(cells: &mut Cells<'_, '_, '_>) -> Option<u64> {
    if cells.row.text(MINIMUM_ORDER).is_empty() {
        return Some(1);
    }
    let written = number(MINIMUM_ORDER, cells)?;
    let packs = u64::try_from(written)
        .ok()
        .filter(|packs| written.fract().is_zero() && (1..=MOST_MINIMUM).contains(packs));
    if packs.is_none() {
        let message = format!("{written} is not a number of packs from 1 to {MOST_MINIMUM}");
        cells.refuse(
            MINIMUM_ORDER,
            Code::OutOfRange,
            message,
            "write the least number of packs that is sold, or nothing",
        );
    }
    packs
}

/// A number above zero, or zero where it may be.
fn positive(column: usize, cells: &mut Cells<'_, '_, '_>, or_zero: bool) -> Option<Decimal> {
    let value = number(column, cells)?;
    if value > Decimal::ZERO || or_zero && value.is_zero() {
        return Some(value);
    }
    let (bound, help) = match or_zero {
        true => ("below 0", "write what one pack costs"),
        false => ("not above 0", "write how much a pack holds"),
    };
    cells.refuse(column, Code::OutOfRange, format!("{} is {bound}", quoted(cells.row.text(column))), help);
    None
}

/// The bare number of a cell: digits, a decimal mark, digits.
fn number(column: usize, cells: &mut Cells<'_, '_, '_>) -> Option<Decimal> {
    let text = cells.row.text(column);
    let value = plain_decimal(&cells.row.number(column));
    if value.is_none() && !starts_formula(&text.replacen(['-', '−'], "", 1)) && text.contains(',') {
        let message = format!("the comma in {} may be a decimal mark or between thousands", quoted(text));
        let help = "write it with a decimal point and nothing between thousands, as `1234.50`";
        cells.refuse(column, Code::AmbiguousCsv, message, help);
    } else if value.is_none() && is_text(column, cells) {
        let message = format!("{} is not a number of at most nine digits and six decimals", quoted(text));
        cells.refuse(column, Code::BadCsv, message, "write digits and a decimal mark only, as `12.50`");
    }
    value
}

/// Whether a cell is text; reports one that a spreadsheet would run.
fn is_text(column: usize, cells: &mut Cells<'_, '_, '_>) -> bool {
    let text = cells.row.text(column);
    let runs = starts_formula(text);
    if runs {
        let message = format!("{} begins as a formula does", quoted(text));
        let help = "write a text or a number that does not begin with `=`, `+`, `-` or `@`";
        cells.refuse(column, Code::FormulaCell, message, help);
    }
    !runs
}

/// Whether a spreadsheet would take a text for a formula and run it.
fn starts_formula(text: &str) -> bool {
    text.starts_with(['=', '+', '-', '@'])
}
