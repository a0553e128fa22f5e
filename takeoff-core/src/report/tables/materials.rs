//! What to bring.
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

/// The same of an order, where the basis is what each job needs.
pub fn ordered(order: &Order) -> Table<'_> {
    table(&order.materials, order.display)
}

fn table(lines: &[MaterialLine], display: Display) -> Table<'_> {
    let quantities = Quantities(display);
    Table::of(lines.iter().collect())
        .text("item", |line| line.item.as_str())
        .text("unit", |line| words::unit(line.unit))
        .number("need", |line| line.need)
        .number("waste_share", |line| line.waste)
        .number("bring", |line| line.bring)
        .text("bring_shown", |line| quantities.amount(line.bring, line.unit))
        .text("basis", |line| basis(line, display))
        .done()
}

/// Where the need comes from, as `12 × 13 1/4 in: collar bead`.
pub(in crate::report) fn basis(line: &MaterialLine, display: Display) -> String {
    let quantities = Quantities(display);
    let part = |part: &Basis| match line.unit {
        Unit::Each => format!("{} × {}: {}", part.count, plain::number(part.each), part.what),
        unit => format!("{} × {}: {}", part.count, quantities.amount(part.each, unit), part.what),
    };
    line.basis.iter().map(part).collect::<Vec<_>>().join("; ")
}
