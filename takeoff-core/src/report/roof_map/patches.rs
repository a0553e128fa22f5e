//! The felt patches.
use super::super::plain;
use super::marks;
use super::sheet::Sheet;
use super::svg::{Pen, Svg};
use crate::takeoff::SlopeTakeoff;

/// Draws every patch with its name at its upper left corner.
pub(super) fn draw(svg: &mut Svg, slope: &SlopeTakeoff, sheet: Sheet) {
    svg.tag("g").with("class", "patches").with("fill", "none").with("stroke", marks::FELT).open();
    for patch in &slope.patches {
        svg.tag("g").with("class", "patch").with("data-patch", patch.name.as_str()).open();
        svg.tag("title").text(&format!("patch {} over {}", patch.name, patch.posts.join(", ")));
        outline(svg, sheet, patch.bounds_mm);
        let [left, .., upper] = patch.bounds_mm;
        svg.tag("text")
            .with("x", left + sheet.mm(0.5))
            .with("y", -upper + sheet.mm(1.9))
            .with("font-size", sheet.mm(1.7))
            .with("fill", marks::FELT)
            .with("stroke", "none")
            .text(&plain::shortened(&patch.name, 10));
        svg.close("g");
    }
    svg.close("g");
}

/// A patch's edge.
pub(super) fn outline(svg: &mut Svg, sheet: Sheet, bounds: [f64; 4]) {
    svg.tag("path")
        .with("d", Pen::default().rectangle(bounds).way())
        .with("stroke-width", sheet.mm(0.35))
        .with("stroke-dasharray", sheet.dashes(&[1.0, 0.5]))
        .empty();
}
