//! The arrays of modules, which lie over all else: their edges only, so that what is below stays readable.
use super::super::markup::Markup;
use super::super::plain;
use super::super::svg::Pen;
use super::marks;
use super::paper::Paper;
use crate::report::document::{ArrayTakeoff, SlopeTakeoff};

/// Characters of an array's name that are drawn.
const NAME_COLUMNS: usize = 24;

/// Draws every array, module by module, with its name at its lower left corner.
pub(super) fn draw(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper) {
    if slope.arrays.is_empty() {
        return;
    }
    svg.tag("g").with("class", "arrays").with("fill", "none").with("stroke", marks::MODULE).open();
    for array in &slope.arrays {
        svg.tag("g").with("class", "array").with("data-array", array.name.as_str()).open();
        svg.tag("title").text(&format!("array {}", array.name));
        modules(svg, paper, modules_of(array));
        name(svg, paper, array);
        svg.close("g");
    }
    svg.close("g");
}

/// The rectangles of its modules.
fn modules_of(array: &ArrayTakeoff) -> impl Iterator<Item = [f64; 4]> {
    let [left, lower, ..] = array.bounds_mm;
    let [width, height] = [array.module_width_mm, array.module_height_mm];
    let [across, up] = [width + array.column_gap_mm, height + array.row_gap_mm];
    let columns = array.columns;
    let places = (0..array.rows).flat_map(move |row| (0..columns).map(move |column| (column, row)));
    places.map(move |(column, row)| {
        let (u, v) = (left + column as f64 * across, lower + row as f64 * up);
        [u, v, u + width, v + height]
    })
}

/// The edges of modules.
pub(super) fn modules(svg: &mut Markup, paper: Paper, modules: impl Iterator<Item = [f64; 4]>) {
    let pen = modules.fold(Pen::default(), |pen, module| pen.rectangle(module));
    svg.tag("path")
        .with("d", pen.way())
        .with("stroke-width", paper.mm(marks::THIN))
        .with("stroke-dasharray", paper.dashes(&[2.2, 0.7]))
        .empty();
}

/// The name in the lower left corner, within its array.
fn name(svg: &mut Markup, paper: Paper, array: &ArrayTakeoff) {
    let [left, lower, ..] = array.bounds_mm;
    let size = paper.mm(marks::SMALL);
    svg.tag("text")
        .with("x", left + 0.5 * size)
        .with("y", -lower - 0.5 * size)
        .with("font-size", size)
        .with("font-style", "italic")
        .with("fill", marks::MODULE)
        .with("stroke", marks::PAPER)
        .with("stroke-width", 0.3 * size)
        .with("paint-order", "stroke")
        .text(&plain::shortened(&array.name, NAME_COLUMNS));
}
