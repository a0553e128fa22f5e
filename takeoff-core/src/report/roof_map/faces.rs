//! The visible faces of the tiles that are handled, each hatched and lettered by what becomes of it.
use std::collections::BTreeMap;

use super::super::markup::Markup;
use super::super::svg::rings;
use super::marks::{self, MARKS, Mark};
use super::paper::Paper;
use super::posts;
use crate::report::document::{Cut, PostTakeoff, SlopeTakeoff, TileWork};

/// Height of a letter on paper, mm, where the tile has room for it.
const LETTER: f64 = 2.4;

/// The tiles handled with their marks, in the slope's order.
pub(super) fn marked(slope: &SlopeTakeoff) -> Vec<(Mark, &TileWork)> {
    let cuts: BTreeMap<(&str, &str), &Cut> =
        slope.cuts.iter().map(|cut| ((cut.tile.as_str(), cut.piece.as_str()), cut)).collect();
    let cut = |tile: &TileWork| cuts.get(&(tile.tile.as_str(), tile.piece.as_str())).copied();
    slope.tiles.iter().map(|tile| (Mark::from_work(tile, cut(tile)), tile)).collect()
}

/// Draws the faces, those that matter most last.
pub(super) fn draw(svg: &mut Markup, marked: &[(Mark, &TileWork)], paper: Paper, prefix: &str) {
    for mark in MARKS {
        let mut tiles = marked.iter().filter(|(of, _)| *of == mark).peekable();
        if tiles.peek().is_none() {
            continue;
        }
        let strong = mark == Mark::Severed;
        svg.tag("g")
            .with("class", format!("tile {}", mark.look().id))
            .with("fill", format!("url(#{})", marks::hatch_id(prefix, mark)))
            .with("stroke", if strong { marks::INK } else { marks::GRID })
            .with("stroke-width", paper.mm(if strong { marks::THICK } else { marks::HAIR }))
            .open();
        for (_, tile) in tiles {
            svg.tag("path")
                .with("id", format!("{prefix}-tile-{}", tile.tile.replace(' ', "-")))
                .with("data-tile", tile.tile.as_str())
                .with("d", rings(&visible(tile)))
                .empty();
        }
        svg.close("g");
    }
}

/// Writes each tile's letter where it covers neither opening nor name of the posts that it is for.
pub(super) fn letters(svg: &mut Markup, slope: &SlopeTakeoff, marked: &[(Mark, &TileWork)], paper: Paper) {
    let posts: BTreeMap<&str, &PostTakeoff> =
        slope.posts.iter().map(|post| (post.name.as_str(), post)).collect();
    let size = paper.beside_tiles(LETTER, 0.45);
    svg.tag("g")
        .with("class", "letters")
        .with("font-size", size)
        .with("text-anchor", "middle")
        .with("stroke", marks::PAPER)
        .with("stroke-width", 0.2 * size)
        .with("stroke-linejoin", "round")
        .with("paint-order", "stroke")
        .with("pointer-events", "none")
        .with("aria-hidden", "true")
        .open();
    for mark in MARKS {
        let quiet = matches!(mark, Mark::Loosened | Mark::TakenUp);
        svg.tag("g")
            .with("fill", if quiet { marks::QUIET } else { marks::INK })
            .with("font-weight", if quiet { "normal" } else { "bold" })
            .open();
        for (_, tile) in marked.iter().filter(|(of, _)| *of == mark) {
            let near = tile.posts.iter().filter_map(|name| posts.get(name.as_str()));
            let taken: Vec<[f64; 4]> = near
                .flat_map(|post| [posts::symbol_box(post, paper), posts::name_box(post, paper)])
                .collect();
            if let Some([u, v]) = place(&visible(tile), size, &taken) {
                svg.tag("text").with("x", u).with("y", -v + 0.36 * size).text(mark.look().letter);
            }
        }
        svg.close("g");
    }
    svg.close("g");
}

/// The best of a few places for a letter: within the face, where it covers least of what is taken.
fn place(face: &[Vec<[f64; 2]>], size: f64, taken: &[[f64; 4]]) -> Option<[f64; 2]> {
    let ring = face.first()?;
    let [left, lower, right, upper] = super::bounds(ring)?;
    // Capitals are lower and narrower than the size they are set in.
    let half = 0.37 * size;
    let (across, up) = ((right - left).min(1.3 * size) / 2.0, (upper - lower).min(1.1 * size) / 2.0);
    let middle = [(left + right) / 2.0, (lower + upper) / 2.0];
    let places = [
        [left + across, lower + up],
        [right - across, lower + up],
        [left + across, upper - up],
        [right - across, upper - up],
        [middle[0], lower + up],
        [middle[0], upper - up],
        middle,
    ];
    let covered = |&[u, v]: &[f64; 2]| -> f64 {
        let letter = [u - half, v - half, u + half, v + half];
        taken.iter().map(|&other| overlap(letter, other)).sum()
    };
    let within = places.into_iter().filter(|&at| holds(ring, at));
    within.min_by(|a, b| covered(a).total_cmp(&covered(b))).or(Some(middle))
}

/// The area that two rectangles share.
fn overlap(a: [f64; 4], b: [f64; 4]) -> f64 {
    let across = a[2].min(b[2]) - a[0].max(b[0]);
    let up = a[3].min(b[3]) - a[1].max(b[1]);
    across.max(0.0) * up.max(0.0)
}

/// Point-in-ring test: a ray from the point crosses the ring an odd number of times.
fn holds(ring: &[[f64; 2]], [u, v]: [f64; 2]) -> bool {
    let crossed = |([u0, v0], [u1, v1]): ([f64; 2], [f64; 2])| {
        (v0 > v) != (v1 > v) && u < u0 + (v - v0) / (v1 - v0) * (u1 - u0)
    };
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)).filter(|&side| crossed(side)).count() % 2
        == 1
}

/// The part of a tile that one sees: its clipped footprint within its face. A tile of which nothing is seen
/// (the field's edge leaves no more than its head, under other tiles) is shown as it lies.
fn visible(tile: &TileWork) -> Vec<Vec<[f64; 2]>> {
    let seen = tile.footprint_mm.iter().map(|ring| clipped(ring, tile.face_mm));
    let seen: Vec<_> = seen.filter(|ring| ring.len() > 2).collect();
    if seen.is_empty() { tile.footprint_mm.clone() } else { seen }
}

/// A ring cut to a rectangle, side by side (Sutherland and Hodgman, 1974).
pub(super) fn clipped(ring: &[[f64; 2]], [left, lower, right, upper]: [f64; 4]) -> Vec<[f64; 2]> {
    let distance = |[u, v]: [f64; 2], side: usize| match side {
        0 => u - left,
        1 => v - lower,
        2 => right - u,
        _ => upper - v,
    };
    (0..4).fold(ring.to_vec(), |ring, side| {
        let mut kept = Vec::with_capacity(ring.len() + 2);
        for (&from, &to) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            let (a, b) = (distance(from, side), distance(to, side));
            if a >= 0.0 {
                kept.push(from);
            }
            if (a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0) {
                let share = a / (a - b);
                kept.push([from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]);
            }
        }
        kept
    })
}
