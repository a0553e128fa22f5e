//! Dimensions: where the posts are, the overall size, the exposure, the spacing of the rafters.
use super::super::markup::Markup;
use super::super::quantity::Quantities;
use super::super::svg::{Pen, placed};
use super::marks;
use super::paper::Paper;
use crate::report::document::SlopeTakeoff;

/// Least distance of two dimensions side by side on paper, mm.
const GAP: f64 = 2.6;
/// Distance past the slope's edge of a dimension's line and of its number, mm on paper.
const TICK: [f64; 2] = [4.0, 7.0];

/// Draws every dimension; gives back how many places of posts found no room.
pub(super) fn draw(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, shown: Quantities) -> usize {
    svg.tag("g")
        .with("class", "dimensions")
        .with("fill", marks::DIMENSION)
        .with("stroke", "none")
        .with("font-size", paper.mm(marks::SMALL))
        .open();
    let across = posts_across(svg, slope, paper, shown);
    let up = posts_up(svg, slope, paper, shown);
    overall(svg, slope, paper, shown);
    courses(svg, slope, paper, shown);
    rafters(svg, slope, paper, shown);
    svg.close("g");
    across + up
}

/// The lower left corner of the outline's bounds, from which the posts are measured.
pub(super) fn datum(slope: &SlopeTakeoff) -> [f64; 2] {
    let outline = slope.outline_mm.first().and_then(super::bounds);
    outline.map_or([0.0, 0.0], |[left, lower, ..]| [left, lower])
}

/// Distances of the posts from the slope's left end, below the eave.
fn posts_across(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, shown: Quantities) -> usize {
    let [left, lower, right, _] = paper.slope;
    let from = datum(slope)[0];
    let places = distinct(slope.posts.iter().map(|post| (post.u_mm, post.v_mm)), |u| shown.length(u - from));
    let (placed_at, left_out) = spread(places, [left, right], paper.mm(GAP));
    let mut lines = Pen::default();
    for (at, Place { along: u, to: v, text }) in &placed_at {
        let [tick, number] = TICK.map(|mm| lower - paper.mm(mm));
        lines = lines.to(*u, *v).line(*u, tick).line(*at, number);
        svg.tag("text")
            .with("transform", placed(*at, number - paper.mm(0.5), -90.0))
            .with("text-anchor", "end")
            .with("dy", "0.35em")
            .text(text);
    }
    extension_lines(svg, paper, lines);
    left_out
}

/// Distances of the posts from the eave, left of the slope.
fn posts_up(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, shown: Quantities) -> usize {
    let [left, lower, _, upper] = paper.slope;
    let from = datum(slope)[1];
    let places = distinct(slope.posts.iter().map(|post| (post.v_mm, post.u_mm)), |v| shown.length(v - from));
    let (placed_at, left_out) = spread(places, [lower, upper], paper.mm(GAP));
    let mut lines = Pen::default();
    for (at, Place { along: v, to: u, text }) in &placed_at {
        let [tick, number] = TICK.map(|mm| left - paper.mm(mm));
        lines = lines.to(*u, *v).line(tick, *v).line(number, *at);
        svg.tag("text")
            .with("x", number - paper.mm(0.5))
            .with("y", -at)
            .with("text-anchor", "end")
            .with("dy", "0.35em")
            .text(text);
    }
    extension_lines(svg, paper, lines);
    left_out
}

fn extension_lines(svg: &mut Markup, paper: Paper, lines: Pen) {
    svg.tag("path")
        .with("d", lines.way())
        .with("fill", "none")
        .with("stroke", marks::DIMENSION)
        .with("stroke-width", paper.mm(marks::HAIR))
        .with("stroke-dasharray", paper.dashes(&[0.4, 0.8]))
        .empty();
}

/// A dimension to be shown: where it is, how far its line reaches into the slope, what it says.
pub(super) struct Place {
    pub(super) along: f64,
    pub(super) to: f64,
    pub(super) text: String,
}

/// Coordinates of the posts, those that print alike once.
fn distinct(posts: impl Iterator<Item = (f64, f64)>, show: impl Fn(f64) -> String) -> Vec<Place> {
    let mut posts: Vec<(f64, f64)> = posts.collect();
    posts.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut places: Vec<Place> = Vec::new();
    for (along, to) in posts {
        let text = show(along);
        match places.last_mut() {
            Some(last) if last.text == text => last.to = last.to.min(to),
            _ => places.push(Place { along, to, text }),
        }
    }
    places
}

/// Numbers moved apart to a least gap within a range; where there is no room for all, those too near to
/// the one before are left out. Gives back how many.
pub(super) fn spread(places: Vec<Place>, [from, to]: [f64; 2], gap: f64) -> (Vec<(f64, Place)>, usize) {
    let all = places.len();
    let kept: Vec<Place> = if all as f64 * gap <= to - from {
        places
    } else {
        let mut last = f64::NEG_INFINITY;
        let mut far_enough = |place: &Place| {
            let far = place.along >= last + gap;
            if far {
                last = place.along;
            }
            far
        };
        places.into_iter().filter(|place| far_enough(place)).collect()
    };
    let mut at: Vec<f64> = Vec::with_capacity(kept.len());
    for place in &kept {
        at.push(at.last().map_or(place.along, |last| place.along.max(last + gap)));
    }
    // What was pushed over the end comes back.
    let mut limit = to;
    for at in at.iter_mut().rev() {
        *at = at.min(limit);
        limit = *at - gap;
    }
    let left_out = all - kept.len();
    (at.into_iter().zip(kept).collect(), left_out)
}

/// Overall width below, overall height on the right.
fn overall(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, shown: Quantities) {
    let Some([left, lower, right, upper]) = slope.outline_mm.first().and_then(super::bounds) else {
        return;
    };
    let below = paper.slope[1] - paper.mm(25.0);
    line_with_ends(svg, paper, [left, below], [right, below]);
    number_on(svg, [(left + right) / 2.0, below], 0.0, &shown.length(right - left));
    let beside = paper.slope[2] + paper.mm(25.0);
    line_with_ends(svg, paper, [beside, lower], [beside, upper]);
    number_on(svg, [beside, (lower + upper) / 2.0], -90.0, &shown.length(upper - lower));
}

/// Course numbers on the right, and the exposure of a course about the middle.
fn courses(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, shown: Quantities) {
    let right = paper.slope[2];
    let every = every(paper.tile, paper.mm(GAP));
    for course in slope.courses.iter().filter(|course| (course.course - 1) % every == 0) {
        let upper = course.exposure_mm.map_or(paper.slope[3], |exposure| course.nose_mm + exposure);
        svg.tag("text")
            .with("x", right + paper.mm(5.8))
            .with("y", -(course.nose_mm + upper) / 2.0)
            .with("dy", "0.35em")
            .with("text-anchor", "middle")
            .text(&course.course.to_string());
    }
    let middle = slope.courses.get(slope.courses.len().saturating_sub(1) / 2);
    if let Some((nose, exposure)) = middle.and_then(|course| Some((course.nose_mm, course.exposure_mm?))) {
        let at = right + paper.mm(9.0);
        line_with_ends(svg, paper, [at, nose], [at, nose + exposure]);
        svg.tag("text")
            .with("x", at + paper.mm(1.5))
            .with("y", -(nose + exposure / 2.0))
            .with("dy", "0.35em")
            .text(&shown.short_length(exposure));
    }
}

/// Rafter numbers above, and the spacing of two about the middle, there.
fn rafters(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, shown: Quantities) {
    let upper = paper.slope[3];
    let centres: Vec<f64> = slope.rafters_mm.iter().map(|&[_, upper]| upper).collect();
    let spacings = centres.windows(2).map(|pair| pair[1] - pair[0]);
    let every = every(spacings.fold(f64::INFINITY, f64::min), paper.mm(2.0 * GAP));
    for (number, &u) in (1_u64..).zip(&centres).filter(|(number, _)| (number - 1) % every == 0) {
        svg.tag("text")
            .with("x", u)
            .with("y", -upper - paper.mm(4.2))
            .with("text-anchor", "middle")
            .with("fill", marks::WOOD)
            .text(&format!("R{number}"));
    }
    let middle = centres.len().saturating_sub(1) / 2;
    if let [left, right, ..] = centres.get(middle..).unwrap_or_default() {
        let at = upper + paper.mm(7.5);
        line_with_ends(svg, paper, [*left, at], [*right, at]);
        svg.tag("text")
            .with("x", (left + right) / 2.0)
            .with("y", -at - paper.mm(1.0))
            .with("text-anchor", "middle")
            .text(&shown.short_length(right - left));
    }
}

/// Of numbers this far apart every so many is written, for a least distance.
fn every(apart: f64, least: f64) -> u64 {
    [1, 2, 5, 10, 20, 50, 100].into_iter().find(|&n| n as f64 * apart >= least).unwrap_or(1000)
}

/// A dimension line with a slanted tick at each end.
fn line_with_ends(svg: &mut Markup, paper: Paper, from: [f64; 2], to: [f64; 2]) {
    let tick = paper.mm(0.7);
    let pen =
        [from, to].iter().fold(Pen::default().to(from[0], from[1]).line(to[0], to[1]), |pen, [u, v]| {
            pen.to(u - tick, v - tick).line(u + tick, v + tick)
        });
    svg.tag("path")
        .with("d", pen.way())
        .with("fill", "none")
        .with("stroke", marks::DIMENSION)
        .with("stroke-width", paper.mm(marks::THIN))
        .empty();
}

/// A number over the middle of a dimension line.
fn number_on(svg: &mut Markup, [u, v]: [f64; 2], degrees: f64, text: &str) {
    svg.tag("text")
        .with("transform", placed(u, v, degrees))
        .with("text-anchor", "middle")
        .with("dy", "-0.4em")
        .text(text);
}
