//! The bands of three-course work round deck flashings.
use super::super::markup::Markup;
use super::super::svg::Pen;
use super::marks;
use super::paper::Paper;
use crate::report::document::SlopeTakeoff;

/// Draws the bands of every post that has them.
pub(super) fn draw(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper) {
    if slope.three_course.is_empty() {
        return;
    }
    svg.tag("g").with("class", "bands").open();
    for work in &slope.three_course {
        svg.tag("g").with("class", "band").with("data-bands", work.post.as_str()).open();
        svg.tag("title").text(&format!("three-course bands of {}", work.post));
        outline(svg, paper, &work.bands_mm);
        svg.close("g");
    }
    svg.close("g");
}

/// The bands on the left, at the top and on the right as one shape, open below.
pub(super) fn outline(svg: &mut Markup, paper: Paper, bands: &[[f64; 4]; 3]) {
    let [[_, lower, inner_left, _], [left, top, right, upper], [inner_right, ..]] = *bands;
    let shape = Pen::default().ring(&[
        [left, lower],
        [left, upper],
        [right, upper],
        [right, lower],
        [inner_right, lower],
        [inner_right, top],
        [inner_left, top],
        [inner_left, lower],
    ]);
    svg.tag("path")
        .with("d", shape.way())
        .with("fill", marks::CEMENT)
        .with("fill-opacity", marks::CEMENT_TONE)
        .with("stroke", marks::CEMENT)
        .with("stroke-width", paper.beside_tiles(0.2, 0.04))
        .empty();
}
