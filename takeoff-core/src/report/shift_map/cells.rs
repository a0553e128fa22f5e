//! The cells of the map.
use super::super::markup::Markup;
use super::axes::Axes;
use super::scale::Scale;
use super::{INK, PAPER, PLOT};
use crate::layout::ShiftMap;

/// The hatch of places without a layout.
pub(super) fn define(svg: &mut Markup, prefix: &str) {
    svg.tag("defs").open();
    svg.tag("pattern")
        .with("id", format!("{prefix}-none"))
        .with("patternUnits", "userSpaceOnUse")
        .with("width", 6.0)
        .with("height", 6.0)
        .open();
    svg.tag("rect").with("width", 6.0).with("height", 6.0).with("fill", PAPER).empty();
    svg.tag("path")
        .with("d", "M-1 1l2-2M0 6l6-6M5 7l2-2")
        .with("stroke", INK)
        .with("stroke-width", 0.7)
        .empty();
    svg.close("pattern");
    svg.close("defs");
}

/// Cells of one tone together, row by row, and a cross in each with posts at fault.
pub(super) fn draw(svg: &mut Markup, map: &ShiftMap, axes: &Axes, scale: &Scale, prefix: &str) {
    let tone = |cost: &Option<f64>| cost.map(|cost| scale.tone(cost));
    let filled = |of: Option<usize>| {
        let mut way = String::new();
        for (row, costs) in map.cost.iter().enumerate() {
            let mut column = 0;
            for run in costs.chunk_by(|a, b| tone(a) == tone(b)) {
                if run.first().is_some_and(|cost| tone(cost) == of) {
                    way.push_str(&stretch(axes, row, column, run.len()));
                }
                column += run.len();
            }
        }
        way
    };
    svg.tag("g").with("class", "cells").with("shape-rendering", "crispEdges").open();
    for tone in scale.tones() {
        let way = filled(Some(tone.number));
        svg.tag("path")
            .with("data-tone", tone.number.to_string())
            .with("d", way)
            .with("fill", tone.colour)
            .empty();
    }
    let none = filled(None);
    if !none.is_empty() {
        svg.tag("path")
            .with("data-tone", "none")
            .with("d", none)
            .with("fill", format!("url(#{prefix}-none)"))
            .empty();
    }
    svg.close("g");
    faults(svg, map, axes);
}

/// A run of cells of a row.
fn stretch(axes: &Axes, row: usize, column: usize, cells: usize) -> String {
    let [wide, high] = [axes.right.cell, axes.up.cell];
    let left = PLOT[0] + column as f64 * wide;
    let upper = axes.ends()[1] - (row as f64 + 1.0) * high;
    let long = cells as f64 * wide;
    format!("M{left:.1} {upper:.1}h{long:.1}v{high:.1}h-{long:.1}z")
}

fn faults(svg: &mut Markup, map: &ShiftMap, axes: &Axes) {
    let mut way = String::new();
    for (faults, up) in map.faults.iter().zip(&map.up_mm) {
        for (_, right) in faults.iter().zip(&map.right_mm).filter(|(faults, _)| **faults > 0) {
            way.push_str(&cross(axes.place(*right, *up)));
        }
    }
    if !way.is_empty() {
        crosses(svg, way);
    }
}

/// The way of a cross about a point.
pub(super) fn cross([x, y]: [f64; 2]) -> String {
    format!("M{:.1} {:.1}l4 4m0-4l-4 4", x - 2.0, y - 2.0)
}

/// Crosses that show on every tone.
pub(super) fn crosses(svg: &mut Markup, way: String) {
    for (colour, wide) in [(PAPER, 2.4), (INK, 1.0)] {
        svg.tag("path").with("d", way.as_str()).with("stroke", colour).with("stroke-width", wide).empty();
    }
}
