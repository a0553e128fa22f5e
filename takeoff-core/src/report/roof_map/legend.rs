//! The legend, with counts.
use super::super::markup::Markup;
use super::super::svg::Pen;
use super::super::words;
use super::marks::{self, MARKS, Mark};
use super::paper::Paper;
use super::{arrays, bands, field, patches, posts};
use crate::deck::DeckMethod;
use crate::model::EdgeKind;
use crate::report::document::{SlopeTakeoff, TileWork};

/// Distance of two lines on paper, mm.
const LINE: f64 = 5.4;
/// Left edges of the columns on paper, mm: tiles, posts and felt, lines.
const COLUMNS: [f64; 3] = [3.0, 58.0, 122.0];
/// Width and height of a sample on paper, mm.
const SAMPLE: [f64; 2] = [8.0, 4.0];

/// Draws the legend in the foot of the paper.
pub(super) fn draw(
    svg: &mut Markup,
    slope: &SlopeTakeoff,
    marked: &[(Mark, &TileWork)],
    paper: Paper,
    prefix: &str,
) {
    svg.tag("g")
        .with("class", "legend")
        .with("font-size", paper.mm(marks::PLAIN))
        .with("fill", marks::INK)
        .with("stroke", "none")
        .open();
    tiles(svg, marked, paper, prefix);
    deck(svg, slope, paper);
    lines(svg, slope, paper);
    svg.close("g");
}

/// Kinds of work on tiles.
fn tiles(svg: &mut Markup, marked: &[(Mark, &TileWork)], paper: Paper, prefix: &str) {
    let mut column = Column::new(svg, paper, COLUMNS[0], "TILES");
    for mark in MARKS.into_iter().rev() {
        let count = marked.iter().filter(|(of, _)| *of == mark).count() as u64;
        if count == 0 && mark == Mark::Excluded {
            continue;
        }
        let look = mark.look();
        let (svg, [left, lower, right, upper]) = column.next(&format!("{} ({})", look.words, count));
        svg.tag("path")
            .with("d", Pen::default().rectangle([left, lower, right, upper]).way())
            .with("fill", format!("url(#{})", marks::hatch_id(prefix, mark)))
            .with("stroke", marks::INK)
            .with("stroke-width", paper.mm(if mark == Mark::Severed { marks::THICK } else { marks::HAIR }))
            .empty();
        svg.tag("text")
            .with("x", (left + right) / 2.0)
            .with("y", -(lower + upper) / 2.0)
            .with("dy", "0.36em")
            .with("text-anchor", "middle")
            .with("font-weight", "bold")
            .with("stroke", marks::PAPER)
            .with("stroke-width", paper.mm(0.5))
            .with("stroke-linejoin", "round")
            .with("paint-order", "stroke")
            .text(look.letter);
    }
}

/// Posts, flashings, patches, bands.
fn deck(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper) {
    let posts = &slope.posts;
    let by = |method: DeckMethod| posts.iter().filter(|post| post.deck.method == method).count();
    let look_again = posts.iter().filter(|post| posts::wants_a_look(post)).count() as u64;
    let better = posts.iter().filter(|post| post.nearest.is_some()).count() as u64;
    let mut column = Column::new(svg, paper, COLUMNS[1], "POSTS AND FELT");
    let centre = |[left, lower, right, upper]: [f64; 4]| [(left + right) / 2.0, (lower + upper) / 2.0];

    let (svg, at) = column.next(&format!("post and its hole ({})", posts.len()));
    svg.tag("g").with("fill", "none").with("stroke", marks::INK).open();
    posts::symbol(svg, paper, centre(at), [paper.mm(0.8); 2]);
    svg.close("g");
    if look_again > 0 {
        let (svg, at) = column.next(&format!("check: see posts.csv ({look_again})"));
        let [u, v] = centre(at);
        svg.tag("text")
            .with("x", u)
            .with("y", -v)
            .with("dy", "0.36em")
            .with("text-anchor", "middle")
            .with("font-weight", "bold")
            .text("A1!");
    }
    if better > 0 {
        let (svg, at) = column.next(&format!("move to ({better})"));
        svg.tag("g").with("fill", "none").with("stroke", marks::INK).open();
        let [u, v] = centre(at);
        posts::better_place(svg, paper, [u, v - paper.mm(1.9)], v + paper.mm(1.3));
        svg.close("g");
    }
    let (tucked, patched) = (by(DeckMethod::Tucked), by(DeckMethod::Patched));
    let (svg, at) = column.next(&format!("deck flashing, {tucked} tucked, {patched} patched"));
    svg.tag("g").with("fill", "none").with("stroke", marks::INK).open();
    posts::flashing(svg, paper, at);
    svg.close("g");
    if !slope.patches.is_empty() {
        let (svg, at) = column.next(&format!("felt patch ({})", slope.patches.len()));
        svg.tag("g").with("fill", "none").with("stroke", marks::FELT).open();
        patches::outline(svg, paper, at);
        svg.close("g");
    }
    if !slope.three_course.is_empty() {
        let (svg, [left, lower, right, upper]) =
            column.next(&format!("three-course bands ({})", slope.three_course.len()));
        let (aside, top) = ((right - left) / 4.0, (lower + upper) / 2.0);
        let sides = [[left, lower, left + aside, top], [right - aside, lower, right, top]];
        bands::outline(svg, paper, &[sides[0], [left, top, right, upper], sides[1]]);
    }
    if !slope.lap_lines_mm.is_empty() {
        let (svg, at) = column.next(&format!("lap line of the felt ({})", slope.lap_lines_mm.len()));
        field::lap_line(svg, paper, across(at));
    }
    if !slope.rafters_mm.is_empty() {
        let (svg, at) = column.next(&format!("rafter, centre line ({})", slope.rafters_mm.len()));
        field::rafter_line(svg, paper, across(at));
    }
}

/// The edges of the slope, its openings, and the modules over it.
fn lines(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper) {
    let mut kinds: Vec<EdgeKind> = slope.edges.iter().copied().flatten().collect();
    kinds.sort();
    kinds.dedup();
    let mut column = Column::new(svg, paper, COLUMNS[2], "EDGES");
    for kind in kinds {
        let (svg, at) = column.next(words::edge(kind));
        svg.tag("g").with("fill", "none").with("stroke", marks::INK).open();
        field::edge_line(svg, paper, Some(kind), &across(at).way());
        svg.close("g");
    }
    if slope.outline_mm.len() > 1 {
        let (svg, [left, lower, right, upper]) = column.next("chimney, vent, skylight");
        let pen = Pen::default()
            .rectangle([left, lower, right, upper])
            .to(left, lower)
            .line(right, upper)
            .to(left, upper)
            .line(right, lower);
        svg.tag("path")
            .with("d", pen.way())
            .with("fill", "none")
            .with("stroke", marks::INK)
            .with("stroke-width", paper.mm(marks::THIN))
            .empty();
    }
    let modules: u64 = slope.arrays.iter().map(|array| array.columns * array.rows).sum();
    if modules > 0 {
        let (svg, at) = column.next(&format!("module ({modules})"));
        svg.tag("g").with("fill", "none").with("stroke", marks::MODULE).open();
        arrays::modules(svg, paper, std::iter::once(at));
        svg.close("g");
    }
}

fn across([left, lower, right, upper]: [f64; 4]) -> Pen {
    let middle = (lower + upper) / 2.0;
    Pen::default().to(left, middle).line(right, middle)
}

/// A column of the legend that grows line by line.
struct Column<'s> {
    svg: &'s mut Markup,
    paper: Paper,
    left: f64,
    down: f64,
}

impl<'s> Column<'s> {
    fn new(svg: &'s mut Markup, paper: Paper, left: f64, head: &str) -> Column<'s> {
        let [u, v] = paper.foot(left, 4.5);
        svg.tag("text").with("x", u).with("y", -v).with("font-weight", "bold").text(head);
        Column { svg, paper, left, down: 7.0 }
    }

    /// Writes the words of the next line; gives back where its sample goes: left, lower, right, upper.
    fn next(&mut self, words: &str) -> (&mut Markup, [f64; 4]) {
        let [width, height] = SAMPLE;
        let [left, upper] = self.paper.foot(self.left, self.down);
        let [right, lower] = self.paper.foot(self.left + width, self.down + height);
        self.down += LINE;
        self.svg
            .tag("text")
            .with("x", right + self.paper.mm(1.5))
            .with("y", -(lower + upper) / 2.0)
            .with("dy", "0.36em")
            .text(words);
        (&mut *self.svg, [left, lower, right, upper])
    }
}
