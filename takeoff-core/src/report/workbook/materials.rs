//! The sheet of materials: need, waste, what to bring, and why.
use rust_xlsxwriter::XlsxError;

use super::measure::unit;
use super::page::Head::{Numbers, Words};
use super::page::{Cell, Page, at};
use super::styles::{Kind, Look};
use super::{Book, Sheet};
use crate::materials::Material;
use crate::quantities::MaterialLine;
use crate::report::tables::basis;
use crate::units::Unit;

const NEED: u16 = 2;
const WASTE: u16 = 3;
const WITH_WASTE: u16 = 4;
const BRING: u16 = 5;

/// A line a material.
pub(super) fn materials(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let mut page = Page::new(book, "materials", &[34.0, 8.0, 12.0, 10.0, 12.0, 12.0, 80.0])?;
    page.put(0, 0, Look::Title, format!("{}: materials", book.takeoff.job))?;
    page.paragraph(
        1,
        Look::Note,
        "Yellow cells with a border are inputs. Need with waste = need × (1 + waste). What is bought by the piece is \
         brought in whole pieces, up; what is within a billionth of a whole number is that number.",
    )?;
    page.heads(
        2,
        &[
            Words("item"),
            Words("unit"),
            Numbers("need (unit)"),
            Numbers("waste (%)"),
            Numbers("need with waste (unit)"),
            Numbers("to bring (unit)"),
            Words("why"),
        ],
    )?;
    for ((row, line), key) in (3..).zip(&book.takeoff.materials).zip(&book.item_keys) {
        material(&mut page, row, line, book)?;
        page.name(format!("waste_{key}"), row, WASTE);
        page.name(format!("need_with_waste_{key}"), row, WITH_WASTE);
        page.name(format!("bring_{key}"), row, BRING);
    }
    page.done()
}

fn material(page: &mut Page<'_>, row: u32, line: &MaterialLine, book: &Book<'_>) -> Result<(), XlsxError> {
    let (unit, size) = unit(line.unit, book.takeoff.display);
    let need = line.need / size;
    let with_waste = need * (1.0 + line.waste);
    let (bring, kind) = match line.unit {
        Unit::Each => (format!("ROUNDUP({}/1.000000001,0)", at(row, WITH_WASTE)), Kind::Count),
        _ => (at(row, WITH_WASTE), Kind::Amount),
    };
    page.row(
        row,
        [
            (Look::Text, line.item.name().into()),
            (Look::Text, unit.into()),
            (Look::Number(Kind::Amount), need_of(line, need, book)),
            waste(line, book),
            (
                Look::Number(Kind::Amount),
                Cell::Formula(format!("={}*(1+{})", at(row, NEED), at(row, WASTE)), with_waste),
            ),
            (Look::Result(kind), Cell::Formula(format!("={bring}"), line.bring / size)),
            (Look::Text, basis(line, book.takeoff.display).into()),
        ],
    )
}

/// The waste: an input, or where the line is another's need in packs, that of the other.
fn waste(line: &MaterialLine, book: &Book<'_>) -> (Look, Cell) {
    let mut lines = book.takeoff.materials.iter().zip(&book.item_keys);
    let quantity = lines.find(|(of, _)| line.packs_of.as_ref() == Some(&of.item) && of.waste == line.waste);
    match quantity {
        Some((_, key)) => (Look::Number(Kind::Share), Cell::Formula(format!("=waste_{key}"), line.waste)),
        None => (Look::Input(Kind::Share), line.waste.into()),
    }
}

/// The need: of spare tiles, what the service level asks for.
fn need_of(line: &MaterialLine, need: f64, book: &Book<'_>) -> Cell {
    let Material::SpareTile(piece) = &line.item else { return need.into() };
    let mut tiles = book.takeoff.spares.iter().zip(&book.tile_keys);
    let of_tile = tiles.find(|(spares, _)| spares.tile == *piece);
    of_tile.map_or(need.into(), |(_, key)| Cell::Formula(format!("=spares_{key}"), need))
}
