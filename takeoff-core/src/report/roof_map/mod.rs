//! The roof map: one drawing a slope, to lay the posts out by and to see what happens to the tiles.
mod arrays;
mod bands;
mod dimensions;
mod faces;
mod field;
mod legend;
mod marks;
mod paper;
mod patches;
mod posts;
#[cfg(test)]
mod tests;
mod title;

use super::markup::Markup;
use super::quantity::Quantities;
use super::words;
use crate::report::document::{SlopeTakeoff, Takeoff, TileWork};
use paper::Paper;

/// The roof map of a slope as SVG, or nothing if the takeoff has no slope of that name.
///
/// The drawing's units are millimetres on the slope, `x = u` and `y = −v`, so the eave is at the bottom;
/// its width and height are given for paper, at the scale that the title block names. It fits Letter and
/// A4, landscape; a slope on which tiles would get too small to read gets a larger paper.
///
/// Tiles are told apart by hatch and letter as well as by colour. For a page that holds the drawing, each
/// tile handled bears `data-tile` (its name) and each post is a group with `data-post` (its name),
/// `data-u-mm` and `data-v-mm`; ids begin with the number of the slope, `s1-`. There are no scripts and
/// no style sheets in it.
///
/// # Example
///
/// ```
/// use takeoff_core::{api::read_and_document, job::{EXAMPLE, Files}, report::roof_map};
/// let takeoff = read_and_document(EXAMPLE, &Files::new()).unwrap();
/// let svg = roof_map(&takeoff, &takeoff.slopes[0].name).unwrap();
/// assert_eq!(svg.matches(" data-post=").count(), takeoff.slopes[0].posts.len());
/// ```
pub fn roof_map(takeoff: &Takeoff, slope: &str) -> Option<String> {
    let number = takeoff.slopes.iter().position(|of| of.name == slope)?;
    Some(draw(takeoff, takeoff.slopes.get(number)?, &format!("s{}", number + 1)))
}

/// Tells whether the map of a slope fits Letter and A4, landscape.
pub(super) fn fits_page(slope: &SlopeTakeoff) -> bool {
    paper(slope).fits_page()
}

fn paper(slope: &SlopeTakeoff) -> Paper {
    let rings = slope.field_mm.iter().chain(&slope.outline_mm);
    let around = bounds(rings.flatten()).unwrap_or([0.0, 0.0, 1000.0, 1000.0]);
    Paper::new(around, usual_tile(slope))
}

fn draw(takeoff: &Takeoff, slope: &SlopeTakeoff, prefix: &str) -> String {
    let paper = paper(slope);
    let marked = faces::marked(slope);
    let mut svg = Markup::default();
    let [width, height] = paper.size;
    svg.tag("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", format!("{width:.1}mm"))
        .with("height", format!("{height:.1}mm"))
        .with(
            "viewBox",
            format!("{:.1} {:.1} {:.1} {:.1}", paper.left(), -paper.top(), paper.mm(width), paper.mm(height)),
        )
        .with("font-family", "Helvetica, Arial, sans-serif")
        .with("role", "img")
        .with("aria-labelledby", format!("{prefix}-title {prefix}-desc"))
        .open();
    svg.tag("title")
        .with("id", format!("{prefix}-title"))
        .text(&format!("{}: roof map of slope {}", takeoff.job, slope.name));
    svg.tag("desc").with("id", format!("{prefix}-desc")).text(&description(slope, &marked));
    svg.tag("defs").open();
    marks::define(&mut svg, paper, prefix);
    field::define_clip(&mut svg, slope, prefix);
    svg.close("defs");
    svg.tag("rect")
        .with("x", paper.left())
        .with("y", -paper.top())
        .with("width", paper.mm(width))
        .with("height", paper.mm(height))
        .with("fill", marks::PAPER)
        .empty();
    field::ground(&mut svg, slope);
    faces::draw(&mut svg, &marked, paper, prefix);
    field::courses(&mut svg, slope, paper, prefix);
    field::hidden_lines(&mut svg, slope, paper, prefix);
    patches::draw(&mut svg, slope, paper);
    bands::draw(&mut svg, slope, paper);
    field::edges(&mut svg, slope, paper);
    arrays::draw(&mut svg, slope, paper);
    let left_out = dimensions::draw(&mut svg, slope, paper, Quantities(takeoff.display));
    posts::draw(&mut svg, slope, paper, prefix);
    faces::letters(&mut svg, slope, &marked, paper);
    legend::draw(&mut svg, slope, &marked, paper, prefix);
    title::draw(&mut svg, takeoff, slope, paper, left_out);
    svg.close("svg");
    svg.done()
}

/// The lesser of cover width and median exposure: a starter course may be much lower than a tile.
fn usual_tile(slope: &SlopeTakeoff) -> f64 {
    let mut exposures: Vec<f64> = slope.courses.iter().filter_map(|course| course.exposure_mm).collect();
    exposures.sort_by(f64::total_cmp);
    let median = exposures.get(exposures.len() / 2).copied();
    median.map_or(slope.columns.cover_mm, |median| median.min(slope.columns.cover_mm))
}

/// The drawing in a few sentences, for those who hear it read.
fn description(slope: &SlopeTakeoff, marked: &[(marks::Mark, &TileWork)]) -> String {
    let tiles = marks::MARKS.into_iter().rev().filter_map(|mark| {
        let count = marked.iter().filter(|(of, _)| *of == mark).count() as u64;
        (count > 0).then(|| format!("{} {}", words::count(count, "tile", "tiles"), mark.look().words))
    });
    let posts = words::count(slope.posts.len() as u64, "post", "posts");
    let tiles = tiles.collect::<Vec<_>>().join("; ");
    let courses = words::count(slope.courses.len() as u64, "course", "courses");
    format!("Eave at the bottom, pitch {}, {courses}, {posts}. {tiles}.", slope.pitch)
}

/// The bounds of some points: left, lower, right, upper.
fn bounds<'p>(points: impl IntoIterator<Item = &'p [f64; 2]>) -> Option<[f64; 4]> {
    points.into_iter().fold(None, |bounds, &[u, v]| {
        let [left, lower, right, upper] = bounds.unwrap_or([u, v, u, v]);
        Some([left.min(u), lower.min(v), right.max(u), upper.max(v)])
    })
}
