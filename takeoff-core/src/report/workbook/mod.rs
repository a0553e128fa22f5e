//! The workbook: what an estimator sends out, with formulas that recalculate.
//!
//! A cell that other sheets use has a name, so that no sheet knows where another keeps its cells: `price_…`, `waste_…`
//! and `bring_…` by item, `spares_…` by tile, `service_level`, `markup` and so on. Beside every formula stands the
//! result that the takeoff has for it.
mod assumptions;
mod cuts;
mod labour;
mod materials;
mod measure;
mod names;
mod order;
mod page;
mod posts;
mod rows;
mod spares;
mod styles;
mod summary;
#[cfg(test)]
mod tests;
mod tiles;

use rust_decimal::prelude::ToPrimitive;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, Worksheet, XlsxError};

use crate::materials::Material;
use crate::report::document::Takeoff;
use crate::units::{Currency, Money};
use styles::Styles;

/// Context of every sheet.
struct Book<'t> {
    takeoff: &'t Takeoff,
    styles: Styles,
    /// For each line of the material list, what its cells' names end in.
    item_keys: Vec<String>,
    /// Key of each kind of tile.
    tile_keys: Vec<String>,
    /// Decimals of the currency.
    decimals: u32,
}

impl Book<'_> {
    /// Suffix of the names of a material's cells.
    fn key_of(&self, material: &Material) -> &str {
        let mut lines = self.takeoff.materials.iter().zip(&self.item_keys);
        lines.find(|(line, _)| line.item == *material).map_or("", |(_, key)| key)
    }
}

/// An amount of money as a number.
fn amount(money: Money) -> f64 {
    money.amount().to_f64().unwrap_or_default()
}

/// A sheet with the names that it gives to its cells.
type Sheet = (Worksheet, Vec<(String, String)>);

/// The bytes of `bid.xlsx`: summary, materials, spares, order, labour, posts, cuts, tiles, assumptions.
///
/// # Example
///
/// An xlsx file is a zip archive:
///
/// ```
/// use takeoff_core::{api::read_and_document, job::{EXAMPLE, Files}, report::workbook};
/// let bytes = workbook(&read_and_document(EXAMPLE, &Files::new()).unwrap());
/// assert!(bytes.starts_with(b"PK"));
/// ```
#[expect(
    clippy::expect_used,
    reason = "memory takes every byte; rows, texts and names are within a workbook's limits"
)]
pub fn workbook(takeoff: &Takeoff) -> Vec<u8> {
    written(takeoff).expect("a workbook takes what is within its limits")
}

fn book(takeoff: &Takeoff) -> Book<'_> {
    let currency = takeoff.bid.as_ref().and_then(|bid| Currency::new(&bid.currency));
    Book {
        takeoff,
        decimals: currency.as_ref().map_or(2, Currency::decimals),
        styles: Styles::new(takeoff.display, currency.as_ref()),
        item_keys: names::keys(takeoff.materials.iter().map(|line| line.item.name())),
        tile_keys: names::keys(takeoff.spares.iter().map(|spares| spares.tile.to_string())),
    }
}

fn written(takeoff: &Takeoff) -> Result<Vec<u8>, XlsxError> {
    let book = book(takeoff);
    let sheets = [
        summary::summary(&book)?,
        materials::materials(&book)?,
        spares::spares(&book)?,
        order::order(&book)?,
        labour::labour(&book)?,
        posts::posts(&book)?,
        cuts::cuts(&book)?,
        tiles::tiles(&book)?,
        assumptions::assumptions(&book)?,
    ];
    let mut workbook = Workbook::new();
    // No clock: the same takeoff gives the same bytes on every day.
    let made = ExcelDateTime::from_ymd(2000, 1, 1)?;
    workbook.set_properties(&DocProperties::new().set_title(&takeoff.job).set_creation_datetime(&made));
    for (sheet, names) in sheets {
        workbook.push_worksheet(sheet);
        for (name, cells) in names {
            workbook.define_name(name, &cells)?;
        }
    }
    workbook.save_to_buffer()
}
