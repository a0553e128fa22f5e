//! The arrays of modules on a slope.
use std::collections::BTreeSet;

use super::Named;
use super::rails::rails;
use crate::geometry::{Polygon, SlopePoint, grid};
use crate::job::fields::collections::MOST_ITEMS;
use crate::job::fields::quantities::Gap;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::job::parse::document::At;
use crate::model::{Array, Assembly, Code, Containment, Outline, Shift};
use crate::units::Length;

/// The most arrays on one slope, and the most rails of all of them.
const MOST_ARRAYS: usize = 1_000;
const MOST_RAILS: usize = 1_000;
/// The most letters of an array's name that has rails: its posts are called by it, and names have 200 at most.
const LONGEST_NAME: usize = 150;

/// The arrays of a slope: each with a name of its own, beside each other, on the slope or a finding.
pub(crate) fn arrays(
    written: &raw::Slope,
    outline: Option<&Outline>,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<Vec<Array>> {
    let fields = written.arrays.given().map_or(&[][..], Vec::as_slice);
    if fields.len() > MOST_ARRAYS {
        let message = format!("{} arrays are more than {MOST_ARRAYS} on one slope", fields.len());
        reader.report(written.arrays.at, Code::TooMany, message, "make several slopes of it");
        return None;
    }
    let polygon = outline.map(Outline::polygon);
    let mut names = BTreeSet::new();
    let mut arrays: Vec<Array> = Vec::new();
    let mut all_right = true;
    for field in fields {
        if let Some(name) = field.get().and_then(|written| written.name.get())
            && !names.insert(name)
        {
            let message = format!("two arrays are called {}", quoted(name));
            reader.report(field.at, Code::TwoArraysOfOneName, message, "call one of them by another name");
        }
        let Some(array) = array(field, written, assemblies, reader) else {
            all_right = false;
            continue;
        };
        if let Some(other) = arrays.iter().find(|other| other.bounds().meets(&array.bounds())) {
            let message = format!("the arrays {} and {} overlap", quoted(&other.name), quoted(&array.name));
            let help = "look at their places, their modules' width and height as laid, and their gaps";
            reader.report(field.at, Code::ArraysOverlap, message, help);
        } else if let Some(other) = arrays.iter().find(|other| other.swept().meets(&array.swept())) {
            let [one, two] = [other, &array].map(|array| quoted(&array.name));
            let message = format!("a layout could move the arrays {one} and {two} over each other");
            reader.report(
                field.at,
                Code::ShiftTooFar,
                message,
                "give one of them a smaller `shift`, or both",
            );
        }
        if let Some(polygon) = &polygon {
            check_lies(&array, polygon, field.at, reader);
        }
        arrays.push(array);
    }
    let rails: usize = arrays.iter().map(Array::rail_count).sum();
    if rails > MOST_RAILS {
        let message = format!("{rails} rails are more than {MOST_RAILS} on one slope");
        let help = "look at the arrays' `rows`; or lay some of them out in a job of their own";
        reader.report(written.arrays.at, Code::TooMany, message, help);
    }
    all_right.then_some(arrays)
}

/// An array lies on its slope, or a finding; wherever a layout may move it, it does.
fn check_lies(array: &Array, outline: &Polygon, at: At, reader: &mut Reader<'_>) {
    let trouble = match Containment::new(array.bounds(), outline) {
        Containment::On => None,
        Containment::Beyond => Some("reaches beyond the slope's outline or over a hole"),
        Containment::Off => Some("does not lie on the slope"),
    };
    if let Some(trouble) = trouble {
        let message = format!("the array {} {trouble}", quoted(&array.name));
        let help = "look at `u` and `v`, its lower left corner, and at its modules";
        reader.report(at, Code::ArrayOffSlope, message, help);
    }
    if array.shift != Shift::default() && Containment::new(array.swept(), outline) != Containment::On {
        let message =
            format!("a layout could move the array {} off the slope or over a hole", quoted(&array.name));
        reader.report(at, Code::ShiftTooFar, message, "give it a smaller `shift`");
    }
}

fn array(
    field: &Field<raw::Array>,
    slope: &raw::Slope,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<Array> {
    let written = field.get()?;
    let column_gap = gap(field.at, "column_gap", &written.column_gap, written.columns.get(), reader);
    let row_gap = gap(field.at, "row_gap", &written.row_gap, written.rows.get(), reader);
    let shift = shift(written)?;
    if shift != Shift::default() {
        reader.needed(field.at, "rails", &written.rails);
    }
    let array = Array {
        name: written.name.get()?.clone(),
        at: SlopePoint { u: *written.u.get()?, v: *written.v.get()? },
        module_width: *written.module_width.get()?,
        module_height: *written.module_height.get()?,
        columns: *written.columns.get()?,
        rows: *written.rows.get()?,
        column_gap: column_gap?,
        row_gap: row_gap?,
        shift,
        rails: None,
    };
    let bounds = array.bounds();
    let within = bounds.right.max(bounds.upper) <= grid(Length::LIMIT);
    if within && array.columns.saturating_mul(array.rows) <= MOST_ITEMS as u32 {
        let rails = rails(&written.rails, &array, slope, assemblies, reader)?;
        if rails.is_some() && array.name.chars().count() > LONGEST_NAME {
            let name = quoted(&array.name);
            let message =
                format!("the array {name} has rails, and a name of more than {LONGEST_NAME} letters");
            let help = "give it a shorter one, from which a layout makes those of its posts";
            reader.report(written.name.at, Code::OutOfRange, message, help);
        }
        return Some(Array { rails, ..array });
    }
    let message = format!(
        "the array {} reaches beyond 10 km, or has more than {MOST_ITEMS} modules",
        quoted(&array.name)
    );
    reader.report(field.at, Code::OutOfRange, message, "look at its counts, and at the size of its modules");
    None
}

/// Reach within which a layout may move an array.
fn shift(written: &raw::Array) -> Option<Shift> {
    let Some(written) = written.shift.optional()? else {
        return Some(Shift::default());
    };
    let [left, right, down, up] = [&written.left, &written.right, &written.down, &written.up]
        .map(|way| way.optional().map(|way| way.copied().unwrap_or_default()));
    Some(Shift { left: left?, right: right?, down: down?, up: up? })
}

/// The gap between modules, which has to be given where there are two or more.
fn gap(
    at: At,
    name: &str,
    gap: &Field<Option<Gap>>,
    count: Option<&u32>,
    reader: &mut Reader<'_>,
) -> Option<Length> {
    match count? {
        1 => Some(gap.given().copied().unwrap_or_default()),
        _ => reader.needed(at, name, gap).copied(),
    }
}
