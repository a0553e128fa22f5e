//! Materials to bring.
use super::super::quantity::Quantities;
use super::super::{plain, words};
use super::Table;
use crate::model::Display;
use crate::quantities::{Basis, MaterialLine};
use crate::report::document::{Order, Takeoff};
use crate::units::Unit;

/// One row a line of the material list; `need` and `bring` are in the unit that the column `unit` names.
pub fn materials(takeoff: &Takeoff) -> Table<'_> {
    table(&takeoff.materials, takeoff.display)
}

/// Each item with the amount to bring, in words.
pub(crate) fn brought(takeoff: &Takeoff) -> Vec<(String, String)> {
    let quantities = Quantities(takeoff.display);
    takeoff
        .materials
        .iter()
        .map(|line| (line.item.name(), quantities.amount(line.bring, line.unit)))
        .collect()
}

/// One row per line of an order's material list; its basis is the need of each job.
pub fn ordered(order: &Order) -> Table<'_> {
    table(&order.materials, order.display)
}

fn table(lines: &[MaterialLine], display: Display) -> Table<'_> {
    let quantities = Quantities(display);
    Table::from_rows(lines.iter().collect())
        .text("item", |line| line.item.name())
        .text("unit", |line| words::unit(line.unit))
        .number("need", |line| line.need)
        .number("waste_share", |line| line.waste)
        .number("bring", |line| line.bring)
        .text("bring_shown", |line| quantities.amount(line.bring, line.unit))
        .text("basis", |line| basis(line, display))
        .done()
}

/// Basis of the need: `12 × 13 1/4 in: collar bead`.
pub(in crate::report) fn basis(line: &MaterialLine, display: Display) -> String {
    let quantities = Quantities(display);
    let part = |part: &Basis| match line.unit {
        Unit::Each => format!("{} × {}: {}", part.count, plain::number(part.each), part.what),
        unit => format!("{} × {}: {}", part.count, quantities.amount(part.each, unit), part.what),
    };
    line.basis.iter().map(part).collect::<Vec<_>>().join("; ")
}
