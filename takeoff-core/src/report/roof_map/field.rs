//! The slope itself: its field of tile, edges and openings, courses and joints, rafters and lap lines.
use super::super::markup::Markup;
use super::super::svg::{Pen, placed, rings};
use super::super::words;
use super::marks;
use super::paper::Paper;
use crate::model::EdgeKind;
use crate::report::document::SlopeTakeoff;

/// Clip path of the tiled field.
pub(super) fn define_clip(svg: &mut Markup, slope: &SlopeTakeoff, prefix: &str) {
    svg.tag("clipPath").with("id", format!("{prefix}-field")).open();
    svg.tag("path").with("d", rings(&slope.field_mm)).with("clip-rule", "evenodd").empty();
    svg.close("clipPath");
}

/// The ground: the field of tile, openings in it left blank.
pub(super) fn ground(svg: &mut Markup, slope: &SlopeTakeoff) {
    svg.tag("path")
        .with("d", rings(&slope.field_mm))
        .with("fill", marks::FIELD)
        .with("fill-rule", "evenodd")
        .empty();
}

/// Noses and joints, lightly, over the tiles that are handled.
pub(super) fn courses(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, prefix: &str) {
    let [left, _, right, top] = paper.slope;
    svg.tag("g")
        .with("clip-path", format!("url(#{prefix}-field)"))
        .with("fill", "none")
        .with("stroke", marks::GRID)
        .with("stroke-width", paper.mm(marks::HAIR))
        .open();
    let noses = slope
        .courses
        .iter()
        .fold(Pen::default(), |pen, course| pen.to(left, course.nose_mm).line(right, course.nose_mm));
    svg.tag("path").with("d", noses.way()).empty();
    // The joints of a course are the dashes of one broad line along it: a line a course, not one a tile.
    let width = paper.mm(marks::HAIR);
    let cover = slope.columns.cover_mm;
    for course in &slope.courses {
        let upper = course.exposure_mm.map_or(top, |exposure| course.nose_mm + exposure);
        let middle = (course.nose_mm + upper) / 2.0;
        for edge in joint_edges(slope) {
            let first = course.joint_mm + edge;
            let start = first - ((first - left) / cover).floor() * cover - cover - width / 2.0;
            svg.tag("path")
                .with("d", Pen::default().to(start, middle).line(right, middle).way())
                .with("stroke-width", upper - course.nose_mm)
                .with("stroke-dasharray", format!("{width:.3} {:.6}", cover - width))
                .empty();
        }
    }
    svg.close("g");
}

/// Offsets of the lines up each column from its joint: the joint itself, or both sides of a cover.
fn joint_edges(slope: &SlopeTakeoff) -> Vec<f64> {
    match slope.columns.widths_mm.as_slice() {
        [_, cover_width] => vec![-cover_width / 2.0, cover_width / 2.0],
        _ => vec![0.0],
    }
}

/// Rafters and lap lines, which lie under the tile, as long thin lines across the field.
pub(super) fn hidden_lines(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper, prefix: &str) {
    let [left, lower, right, upper] = paper.slope;
    svg.tag("g").with("clip-path", format!("url(#{prefix}-field)")).with("fill", "none").open();
    rafter_line(svg, paper, rafters(slope, lower, upper));
    let laps = slope.lap_lines_mm.iter().fold(Pen::default(), |pen, &v| pen.to(left, v).line(right, v));
    lap_line(svg, paper, laps);
    svg.close("g");
}

/// The centre lines of the rafters from one height of the drawing to another.
fn rafters(slope: &SlopeTakeoff, lower: f64, upper: f64) -> Pen {
    let bounds = slope.outline_mm.first().and_then(super::bounds);
    let Some([_, low, _, high]) = bounds else { return Pen::default() };
    slope.rafters_mm.iter().fold(Pen::default(), |pen, &[from, to]| {
        let at = |v: f64| from + (to - from) * ((v - low) / (high - low));
        pen.to(at(lower), lower).line(at(upper), upper)
    })
}

/// Draws as a rafter's centre line.
pub(super) fn rafter_line(svg: &mut Markup, paper: Paper, pen: Pen) {
    svg.tag("path")
        .with("d", pen.way())
        .with("stroke", marks::WOOD)
        .with("stroke-width", paper.mm(0.16))
        .with("stroke-dasharray", paper.dashes(&[4.0, 0.8, 0.6, 0.8]))
        .empty();
}

/// Draws as a lap line.
pub(super) fn lap_line(svg: &mut Markup, paper: Paper, pen: Pen) {
    svg.tag("path")
        .with("d", pen.way())
        .with("stroke", marks::FELT)
        .with("stroke-width", paper.mm(0.25))
        .with("stroke-dasharray", paper.dashes(&[3.0, 1.0]))
        .empty();
}

/// The edges of the slope, each by its kind, with its name; openings with a cross.
pub(super) fn edges(svg: &mut Markup, slope: &SlopeTakeoff, paper: Paper) {
    svg.tag("g").with("fill", "none").with("stroke", marks::INK).with("stroke-linecap", "square").open();
    // The tile's own edge, where it hangs over the eave.
    svg.tag("path").with("d", rings(&slope.field_mm)).with("stroke-width", paper.mm(marks::HAIR)).empty();
    for hole in slope.outline_mm.iter().skip(1) {
        let pen = hole
            .iter()
            .zip(hole.iter().skip(hole.len() / 2))
            .fold(Pen::default().ring(hole), |pen, (a, b)| pen.to(a[0], a[1]).line(b[0], b[1]));
        svg.tag("path").with("d", pen.way()).with("stroke-width", paper.mm(marks::THIN)).empty();
    }
    for (kind, [from, to]) in sides(slope) {
        edge_line(svg, paper, kind, Pen::default().to(from[0], from[1]).line(to[0], to[1]).way().as_str());
    }
    svg.close("g");
    for (kind, ends) in sides(slope) {
        if let Some(kind) = kind {
            edge_name(svg, paper, words::edge(kind), ends);
        }
    }
}

/// The sides of the outline with their kinds.
pub(super) fn sides(slope: &SlopeTakeoff) -> Vec<(Option<EdgeKind>, [[f64; 2]; 2])> {
    let Some(outline) = slope.outline_mm.first() else { return Vec::new() };
    let ends = outline.iter().zip(outline.iter().cycle().skip(1));
    ends.enumerate().map(|(i, (&from, &to))| (slope.edges.get(i).copied().flatten(), [from, to])).collect()
}

/// Draws along an edge of this kind.
pub(super) fn edge_line(svg: &mut Markup, paper: Paper, kind: Option<EdgeKind>, way: &str) {
    let (width, dash): (f64, &[f64]) = match kind {
        Some(EdgeKind::Eave) => (0.8, &[]),
        Some(EdgeKind::Ridge) => (1.0, &[]),
        Some(EdgeKind::Rake) => (0.4, &[]),
        Some(EdgeKind::Hip) => (0.6, &[3.0, 1.2, 0.2, 1.2]),
        Some(EdgeKind::Valley) => (0.6, &[1.6, 1.3]),
        Some(EdgeKind::Wall) => (1.4, &[0.3, 0.9]),
        None => (0.25, &[]),
    };
    let mut line = svg.tag("path").with("d", way).with("stroke-width", paper.mm(width));
    if !dash.is_empty() {
        line = line.with("stroke-dasharray", paper.dashes(dash)).with("stroke-linecap", "butt");
    }
    line.empty();
    match kind {
        // A ridge is a double line.
        Some(EdgeKind::Ridge) => {
            svg.tag("path")
                .with("d", way)
                .with("stroke", marks::PAPER)
                .with("stroke-width", paper.mm(0.45))
                .empty();
        }
        // A wall stands on a line.
        Some(EdgeKind::Wall) => svg.tag("path").with("d", way).with("stroke-width", paper.mm(0.3)).empty(),
        _ => {}
    }
}

/// The word for an edge, along its outer side.
fn edge_name(svg: &mut Markup, paper: Paper, name: &str, [from, to]: [[f64; 2]; 2]) {
    let (du, dv) = (to[0] - from[0], to[1] - from[1]);
    let length = (du * du + dv * dv).sqrt();
    if length < paper.mm(10.0) {
        return;
    }
    // The outline runs counter-clockwise: outside is on the right hand.
    let (out_u, out_v) = (dv / length, -du / length);
    let (u, v) =
        ((from[0] + to[0]) / 2.0 + out_u * paper.mm(2.0), (from[1] + to[1]) / 2.0 + out_v * paper.mm(2.0));
    // Text leans with the edge and is never upside down.
    let lean = crate::num::math::atan2(-dv, du).to_degrees();
    let lean = if lean > 90.5 {
        lean - 180.0
    } else if lean < -89.5 {
        lean + 180.0
    } else {
        lean
    };
    svg.tag("text")
        .with("transform", placed(u, v, lean))
        .with("font-size", paper.mm(marks::SMALL))
        .with("font-style", "italic")
        .with("text-anchor", "middle")
        .with("dy", "0.35em")
        .with("fill", marks::INK)
        .text(name);
}
