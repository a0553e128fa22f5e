//! What to bring.
use super::super::quantity::Quantities;
use super::super::{plain, words};
use super::Table;
use crate::job::Display;
use crate::takeoff::{Basis, MaterialLine, Takeoff, Unit};

/// One row a line of the material list; `need` and `bring` are in the unit that the column `unit` names.
pub fn materials(takeoff: &Takeoff) -> Table<'_> {
    let quantities = Quantities(takeoff.display);
    Table::of(takeoff.materials.iter().collect())
        .text("item", |line| line.item.as_str())
        .text("unit", |line| words::unit(line.unit))
        .number("need", |line| line.need)
        .number("waste_share", |line| line.waste)
        .number("bring", |line| line.bring)
        .text("bring_shown", |line| quantities.amount(line.bring, line.unit))
        .text("basis", |line| basis(line, takeoff.display))
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
