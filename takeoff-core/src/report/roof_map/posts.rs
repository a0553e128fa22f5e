//! The posts: opening, name and deck flashing of each, and the better place near it.
use super::super::markup::Markup;
use super::super::svg::Pen;
use super::super::{plain, words};
use super::marks;
use super::paper::Paper;
use crate::report::document::{PostTakeoff, SlopeTakeoff};

/// Characters of a post's name that are drawn.
const NAME_COLUMNS: usize = 10;
/// Reach of the cross over the opening on paper, mm.
const CROSS: f64 = 1.0;

/// Draws every post, as one group that can be moved as a whole.
pub(super) fn draw(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, prefix: &str) {
    svg.tag("g").with("class", "posts").with("fill", "none").with("stroke", marks::INK).open();
    for (number, post) in (1..).zip(&slope.posts) {
        svg.tag("g")
            .with("id", format!("{prefix}-post-{number}"))
            .with("class", "post")
            .with("data-post", post.name.as_str())
            .with("data-u-mm", plain::number(post.u_mm))
            .with("data-v-mm", plain::number(post.v_mm))
            .open();
        svg.tag("title").text(&description(post));
        flashing(svg, paper, post.deck.flashing_mm);
        if let Some(nearest) = &post.nearest {
            better_place(svg, paper, [post.u_mm, post.v_mm], nearest.v_mm);
        }
        symbol(
            svg,
            paper,
            [post.opening.u_mm, post.opening.v_mm],
            [post.opening.half_width_mm, post.opening.half_height_mm],
        );
        let [left, lower, ..] = name_box(post, paper);
        name(svg, paper, [left, lower], &label(post));
        svg.close("g");
    }
    svg.close("g");
}

/// A post's opening, true to scale, with a cross that one finds when the opening is small.
pub(super) fn symbol(svg: &mut Markup, paper: Paper, [u, v]: [f64; 2], [half_width, half_height]: [f64; 2]) {
    svg.tag("ellipse")
        .with("cx", u)
        .with("cy", -v)
        .with("rx", half_width)
        .with("ry", half_height)
        .with("fill", marks::PAPER)
        .with("stroke-width", paper.beside_tiles(0.3, 0.06))
        .empty();
    let (across, up) =
        (half_width + paper.beside_tiles(CROSS, 0.25), half_height + paper.beside_tiles(CROSS, 0.25));
    let cross = Pen::default().to(u - across, v).line(u + across, v).to(u, v - up).line(u, v + up);
    svg.tag("path")
        .with("d", cross.way())
        .with("stroke-width", paper.beside_tiles(marks::THIN, 0.04))
        .empty();
}

/// A deck flashing.
pub(super) fn flashing(svg: &mut Markup, paper: Paper, bounds: [f64; 4]) {
    svg.tag("path")
        .with("d", Pen::default().rectangle(bounds).way())
        .with("stroke-width", paper.beside_tiles(0.25, 0.05))
        .empty();
}

/// The better place near a post, and the way there.
pub(super) fn better_place(svg: &mut Markup, paper: Paper, [u, from]: [f64; 2], v: f64) {
    let radius = paper.beside_tiles(0.6, 0.12);
    let toward = if v > from { -radius } else { radius };
    let way = Pen::default().to(u, from).line(u, v + toward).ring(&[
        [u - radius, v],
        [u, v - radius],
        [u + radius, v],
        [u, v + radius],
    ]);
    svg.tag("path").with("d", way.way()).with("stroke-width", paper.beside_tiles(0.25, 0.05)).empty();
}

/// Bounding box of a post's symbol: left, lower, right, upper.
pub(super) fn symbol_box(post: &PostTakeoff, paper: Paper) -> [f64; 4] {
    let opening = &post.opening;
    let (across, up) = (opening.half_width_mm + paper.mm(0.2), opening.half_height_mm + paper.mm(0.2));
    [opening.u_mm - across, opening.v_mm - up, opening.u_mm + across, opening.v_mm + up]
}

/// Bounding box of a post's name, to its upper right: left, lower, right, upper.
pub(super) fn name_box(post: &PostTakeoff, paper: Paper) -> [f64; 4] {
    let left = post.opening.u_mm + post.opening.half_width_mm + paper.mm(0.5);
    let lower = post.opening.v_mm + paper.mm(0.5);
    let size = name_size(paper);
    let width = plain::columns(&label(post)) as f64 * 0.62 * size;
    [left, lower, left + width, lower + 0.75 * size]
}

fn name_size(paper: Paper) -> f64 {
    paper.beside_tiles(marks::SMALL, 0.65)
}

/// The name as shown; `!` for a post that asks for a second look.
fn label(post: &PostTakeoff) -> String {
    let name = plain::shortened(&post.name, NAME_COLUMNS);
    if wants_a_look(post) { format!("{name}!") } else { name }
}

/// Whether a tile can't be cut in one piece, a check of the tile flashing fails or the lag has no wood.
pub(super) fn wants_a_look(post: &PostTakeoff) -> bool {
    let no_wood = post.support.as_ref().is_some_and(|support| !support.on_rafter && !support.blocked);
    post.severed || !post.top.passes || no_wood
}

fn name(svg: &mut Markup, paper: Paper, [u, v]: [f64; 2], label: &str) {
    svg.tag("text")
        .with("x", u)
        .with("y", -v)
        .with("font-size", name_size(paper))
        .with("font-weight", "bold")
        .with("fill", marks::INK)
        .with("stroke", marks::PAPER)
        .with("stroke-width", 0.3 * name_size(paper))
        .with("stroke-linejoin", "round")
        .with("paint-order", "stroke")
        .text(label);
}

/// The post in a sentence, for those who point at it or hear the drawing read.
fn description(post: &PostTakeoff) -> String {
    let severed = if post.severed { ", a tile to replace" } else { "" };
    let deck = words::deck_method(post.deck.method);
    format!("{}: {}{severed}; flashing {deck}", post.name, words::situation(post.situation))
}
