//! The felt patches.
use super::super::markup::Markup;
use super::super::plain;
use super::super::svg::Pen;
use super::marks;
use super::paper::Paper;
use crate::report::document::SlopeTakeoff;

/// Characters of a patch's name that are drawn.
const NAME_COLUMNS: usize = 10;

/// Draws every patch with its name at its upper left corner.
pub(super) fn draw(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper) {
    svg.tag("g").with("class", "patches").with("fill", "none").with("stroke", marks::FELT).open();
    for patch in &slope.patches {
        svg.tag("g").with("class", "patch").with("data-patch", patch.name.as_str()).open();
        svg.tag("title").text(&format!("patch {} over {}", patch.name, patch.posts.join(", ")));
        outline(svg, paper, patch.bounds_mm);
        name(svg, paper, &plain::shortened(&patch.name, NAME_COLUMNS), patch.bounds_mm);
        svg.close("g");
    }
    svg.close("g");
}

/// A patch's edge.
pub(super) fn outline(svg: &mut Markup, paper: Paper, bounds: [f64; 4]) {
    svg.tag("path")
        .with("d", Pen::default().rectangle(bounds).way())
        .with("stroke-width", paper.beside_tiles(0.35, 0.07))
        .with("stroke-dasharray", paper.dashes(&[1.0, 0.5]))
        .empty();
}

/// The name in the upper left corner, where the patch has room for it.
fn name(svg: &mut Markup, paper: Paper, name: &str, [left, _, right, upper]: [f64; 4]) {
    let size = paper.beside_tiles(1.7, 0.5);
    if plain::columns(name) as f64 * 0.62 * size > right - left {
        return;
    }
    svg.tag("text")
        .with("x", left + 0.3 * size)
        .with("y", -upper + 1.05 * size)
        .with("font-size", size)
        .with("fill", marks::FELT)
        .with("stroke", "none")
        .text(name);
}
