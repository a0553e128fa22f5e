//! The workbook: what an estimator sends out, with formulas that recalculate.
//!
//! A cell that other sheets use has a name, so that no sheet knows where another keeps its cells: `price_…`, `waste_…`
//! and `bring_…` by item, `spares_…` by tile, `service_level`, `markup` and so on. Beside every formula stands the
//! result that the takeoff has for it.
mod assumptions;
mod cuts;
mod materials;
mod measure;
mod names;
mod page;
mod posts;
mod rows;
mod spares;
mod styles;
mod summary;
#[cfg(test)]
mod tests;
mod tiles;

use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, Worksheet, XlsxError};

use crate::takeoff::Takeoff;
use styles::Styles;

/// What every sheet is made from.
struct Book<'t> {
    takeoff: &'t Takeoff,
    styles: Styles,
    /// For each line of the material list, what its cells' names end in.
    item_keys: Vec<String>,
    /// The same for each kind of tile.
    tile_keys: Vec<String>,
}

/// A sheet with the names that it gives to its cells.
type Sheet = (Worksheet, Vec<(String, String)>);

/// The bytes of `bid.xlsx`: summary, materials, spares, posts, cuts, tiles, assumptions.
///
/// # Example
///
/// An xlsx file is a zip archive:
///
/// ```
/// use takeoff_core::{api::read_and_take_off, job::Files, report::workbook};
/// let job = include_str!("../../../../fixtures/plain-gable/job.json");
/// let bytes = workbook(&read_and_take_off(job, &Files::new()).unwrap());
/// assert!(bytes.starts_with(b"PK"));
/// ```
#[expect(
    clippy::expect_used,
    reason = "memory takes every byte; rows, texts and names are within a workbook's limits"
)]
pub fn workbook(takeoff: &Takeoff) -> Vec<u8> {
    written(takeoff).expect("a workbook takes what is within its limits")
}

fn written(takeoff: &Takeoff) -> Result<Vec<u8>, XlsxError> {
    let book = Book {
        takeoff,
        styles: Styles::new(takeoff.display, None),
        item_keys: names::keys(takeoff.materials.iter().map(|line| line.item.as_str())),
        tile_keys: names::keys(takeoff.spares.iter().map(|spares| spares.tile.as_str())),
    };
    let sheets = [
        summary::summary(&book)?,
        materials::materials(&book)?,
        spares::spares(&book)?,
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
