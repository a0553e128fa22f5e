//! The title block: what is drawn, at which scale, where north is, and what the drawing is not.
use super::super::markup::Markup;
use super::super::quantity::Quantities;
use super::super::svg::{Pen, placed};
use super::super::{plain, words};
use super::marks;
use super::paper::{FOOT, Paper};
use crate::model::Display;
use crate::report::document::{SlopeTakeoff, Takeoff};

/// Width of the block on paper, mm.
const WIDTH: f64 = 96.0;
/// Longest scale bar on paper, mm.
const LONGEST_BAR: f64 = 50.0;

/// Draws the frame of the foot and the title block at its right.
pub(super) fn draw(svg: &mut Markup, takeoff: &Takeoff, slope: &SlopeTakeoff, paper: Paper, left_out: usize) {
    let shown = Quantities(takeoff.display);
    svg.tag("g").with("class", "title-block").with("fill", marks::INK).with("stroke", "none").open();
    frame(svg, paper);
    let mut block = Block { svg, paper, left: paper.size[0] - WIDTH + 3.0, down: 0.0 };
    block.line(5.5, 4.0, "bold", &takeoff.job);
    block.line(5.0, 3.2, "bold", &format!("slope {}", slope.name));
    block.line(4.5, marks::PLAIN, "normal", &facts(slope, shown));
    block.line(3.6, marks::PLAIN, "normal", &tiling(slope, shown));
    let posts = words::count(slope.posts.len() as u64, "post", "posts");
    block.line(
        3.6,
        marks::PLAIN,
        "normal",
        &format!("{posts}; dimensions from the left end and the lowest edge"),
    );
    let down = block.down;
    scale_bar(svg, paper, takeoff.display, down + 3.0);
    north(svg, paper, slope);
    let notes = notes(paper, left_out);
    let step = 3.0;
    let down = FOOT - 2.5 - step * notes.len() as f64;
    let mut block = Block { svg, paper, left: paper.size[0] - WIDTH + 3.0, down };
    for note in notes {
        block.line(step, marks::SMALL, "normal", &note);
    }
    svg.close("g");
}

/// Limits of the drawing, and printing instructions.
fn notes(paper: Paper, left_out: usize) -> Vec<String> {
    let mut notes = Vec::new();
    if left_out > 0 {
        let dimensions = words::count(left_out as u64, "dimension", "dimensions");
        notes.push(format!("{dimensions} without room here: see posts.csv."));
    }
    notes.push("A drawing for layout: measure on the roof before you cut.".to_owned());
    notes.push("Fall protection, wet cutting, structure, warranty: see the cautions.".to_owned());
    let [width, height] = paper.size;
    notes.push(if paper.fits_page() {
        "Print at 100 % and check the scale bar.".to_owned()
    } else {
        format!("Print at 100 % on {width:.0} × {height:.0} mm of paper and check the scale bar.")
    });
    notes
}

/// A frame about the foot, with a line between legend and title block.
fn frame(svg: &mut Markup, paper: Paper) {
    let [left, upper] = paper.foot(0.5, 0.0);
    let [right, lower] = paper.foot(paper.size[0] - 0.5, FOOT - 0.5);
    let [between, _] = paper.foot(paper.size[0] - WIDTH, 0.0);
    let pen = Pen::default().rectangle([left, lower, right, upper]).to(between, upper).line(between, lower);
    svg.tag("path")
        .with("d", pen.way())
        .with("fill", "none")
        .with("stroke", marks::INK)
        .with("stroke-width", paper.mm(marks::THIN))
        .empty();
}

/// Pitch, area and size.
fn facts(slope: &SlopeTakeoff, shown: Quantities) -> String {
    format!("pitch {}, slope factor {:.4}, {}", slope.pitch, slope.slope_factor, shown.area(slope.area_mm2))
}

/// Courses and exposure.
fn tiling(slope: &SlopeTakeoff, shown: Quantities) -> String {
    let courses = words::count(slope.courses.len() as u64, "course", "courses");
    let exposures: Vec<f64> = slope.courses.iter().filter_map(|course| course.exposure_mm).collect();
    let exposure = shown.range(exposures.iter().copied());
    let cover = shown.short_length(slope.columns.cover_mm);
    exposure.map_or_else(
        || format!("{courses}, cover {cover}"),
        |exposure| format!("{courses}, exposure {exposure}, cover {cover}"),
    )
}

/// A bar of a round length, in four parts.
fn scale_bar(svg: &mut Markup, paper: Paper, display: Display, down: f64) {
    let (unit, name) = match display {
        Display::Imperial => (304.8, "ft"),
        Display::Metric => (1000.0, "m"),
    };
    let longest = paper.mm(LONGEST_BAR) / unit;
    let lengths = [1.0, 2.0, 4.0, 8.0, 10.0, 20.0, 40.0, 80.0, 100.0, 200.0, 400.0, 800.0, 1000.0, 2000.0];
    let length = lengths.into_iter().take_while(|&length| length <= longest).last().unwrap_or(longest);
    let [left, upper] = paper.foot(paper.size[0] - WIDTH + 3.0, down);
    let [_, lower] = paper.foot(0.0, down + 1.6);
    let part = length * unit / 4.0;
    for number in 0..4_u8 {
        let from = left + f64::from(number) * part;
        svg.tag("path")
            .with("d", Pen::default().rectangle([from, lower, from + part, upper]).way())
            .with("fill", if number % 2 == 0 { marks::INK } else { marks::PAPER })
            .with("stroke", marks::INK)
            .with("stroke-width", paper.mm(marks::HAIR))
            .empty();
    }
    for (share, text) in [(0.0, "0".to_owned()), (4.0, format!("{} {name}", plain::number(length)))] {
        svg.tag("text")
            .with("x", left + share * part)
            .with("y", -lower + paper.mm(2.6))
            .with("text-anchor", "middle")
            .with("font-size", paper.mm(marks::SMALL))
            .text(&text);
    }
    svg.tag("text")
        .with("x", left + 4.0 * part + paper.mm(3.0))
        .with("y", -lower)
        .with("font-size", paper.mm(marks::PLAIN))
        .text(&format!("scale 1 : {}", plain::number(paper.scale)));
}

/// An arrow to the north, where the job says how the slope lies.
fn north(svg: &mut Markup, paper: Paper, slope: &SlopeTakeoff) {
    let [u, v] = paper.foot(paper.size[0] - 12.0, 27.0);
    let Some(place) = &slope.place else {
        return;
    };
    // Up on the sheet is up the slope, which is half a turn from its down-slope azimuth.
    let turn = 180.0 - place.azimuth_deg;
    let turn = if turn <= -180.0 { turn + 360.0 } else { turn };
    let mm = |on_paper: f64| paper.mm(on_paper);
    svg.tag("g").with("class", "north").with("transform", placed(u, v, turn)).open();
    let arrow =
        Pen::default().ring(&[[0.0, mm(5.0)], [mm(2.0), mm(-4.0)], [0.0, mm(-2.5)], [mm(-2.0), mm(-4.0)]]);
    svg.tag("path").with("d", arrow.way()).empty();
    svg.tag("text")
        .with("transform", placed(0.0, mm(7.2), -turn))
        .with("text-anchor", "middle")
        .with("dy", "0.36em")
        .with("font-size", mm(3.0))
        .with("font-weight", "bold")
        .text("N");
    svg.close("g");
    svg.tag("text")
        .with("x", u)
        .with("y", -v + mm(11.5))
        .with("text-anchor", "middle")
        .with("font-size", mm(marks::SMALL))
        .text(&format!("down-slope {:.0}°", place.azimuth_deg));
}

/// Lines of text, one under the other.
struct Block<'s> {
    svg: &'s mut Markup,
    paper: Paper,
    left: f64,
    down: f64,
}

impl Block<'_> {
    /// The next line, this far below the one before, cut to the width of the block.
    fn line(&mut self, step: f64, size: f64, weight: &str, text: &str) {
        self.down += step;
        let [u, v] = self.paper.foot(self.left, self.down);
        let room = ((WIDTH - 6.0) / (0.56 * size)) as usize;
        self.svg
            .tag("text")
            .with("x", u)
            .with("y", -v)
            .with("font-size", self.paper.mm(size))
            .with("font-weight", weight)
            .text(&plain::shortened(text, room));
    }
}
