//! Marks of the array's present and chosen position.
use super::super::markup::Markup;
use super::axes::Axes;
use super::{INK, PAPER};
use crate::layout::ArrayLayout;

pub(super) fn draw(svg: &mut Markup, array: &ArrayLayout, axes: &Axes) {
    let [from, to] = [axes.place(0.0, 0.0), axes.place(array.right_mm, array.up_mm)];
    svg.tag("g").with("class", "marks").open();
    if from != to {
        let way = format!("M{:.1} {:.1}L{:.1} {:.1}", from[0], from[1], to[0], to[1]);
        for (colour, wide) in [(PAPER, 4.0), (INK, 1.4)] {
            svg.tag("path").with("d", way.as_str()).with("stroke", colour).with("stroke-width", wide).empty();
        }
    }
    now(svg, from);
    goes(svg, to);
    svg.close("g");
}

/// A ring: where the array is.
pub(super) fn now(svg: &mut Markup, [x, y]: [f64; 2]) {
    for (colour, wide) in [(PAPER, 4.4), (INK, 1.8)] {
        svg.tag("circle")
            .with("cx", x)
            .with("cy", y)
            .with("r", 7.0)
            .with("fill", if colour == INK { "none" } else { PAPER })
            .with("stroke", colour)
            .with("stroke-width", wide)
            .empty();
    }
}

/// A diamond: where it goes.
pub(super) fn goes(svg: &mut Markup, [x, y]: [f64; 2]) {
    let way = format!("M{x:.1} {:.1}l5 5l-5 5l-5-5Z", y - 5.0);
    svg.tag("path").with("d", way).with("stroke", PAPER).with("stroke-width", 1.4).empty();
}
