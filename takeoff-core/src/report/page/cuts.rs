//! The cuts, those alike together.
use std::collections::BTreeMap;

use super::super::quantity::Quantities;
use super::super::words;
use super::grid::Grid;
use super::section::Section;
use crate::report::document::{Cut, SlopeTakeoff, Takeoff};

/// Cuts that show alike.
struct Alike<'c> {
    first: &'c Cut,
    tiles: Vec<String>,
    posts: Vec<String>,
}

/// A table a slope, a row a kind of cut that shows alike.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.slopes.iter().all(|slope| slope.cuts.is_empty()) {
        return None;
    }
    let shown = Quantities(takeoff.display);
    Some(Section::new("cuts", "Cuts in tiles", |html| {
        html.tag("p").text(
            "The centre of the hole from the tile's left edge and from its nose, face up; on curved tile also along the \
             face. The open side is as laid.",
        );
        for slope in &takeoff.slopes {
            let alike = alike(slope, shown);
            Grid::new(format!("Cuts of {}", slope.name), &alike)
                .name("cut", |cuts| words::cut_kind(cuts.first.kind).to_owned())
                .number("tiles", |cuts| cuts.tiles.len().to_string())
                .words_if_several("of", |cuts| cuts.first.piece.clone())
                .number("width × height", |cuts| size(cuts.first, shown))
                .number("from left", |cuts| shown.short_length(cuts.first.from_left_mm))
                .number("along the face", |cuts| along_face(cuts.first, shown))
                .number("from nose", |cuts| shown.short_length(cuts.first.from_nose_mm))
                .words("open side", |cuts| open_to(cuts.first))
                .tiles("tile", |cuts| &cuts.tiles)
                .names("post", |cuts| &cuts.posts)
                .write(html);
        }
    }))
}

/// The cuts of a slope, those that show alike together, in the order of the first of each.
fn alike(slope: &SlopeTakeoff, shown: Quantities) -> Vec<Alike<'_>> {
    let mut places = BTreeMap::new();
    let mut all: Vec<Alike> = Vec::new();
    for cut in &slope.cuts {
        let [left, nose] = [cut.from_left_mm, cut.from_nose_mm].map(|mm| shown.short_length(mm));
        let look = (&cut.piece, cut.kind, size(cut, shown), left, along_face(cut, shown), nose, open_to(cut));
        let place = *places.entry(look).or_insert(all.len());
        if place == all.len() {
            all.push(Alike { first: cut, tiles: Vec::new(), posts: Vec::new() });
        }
        let Some(group) = all.get_mut(place) else { continue };
        group.tiles.push(cut.tile.clone());
        for post in &cut.posts {
            if !group.posts.contains(post) {
                group.posts.push(post.clone());
            }
        }
    }
    all
}

fn size(cut: &Cut, shown: Quantities) -> String {
    let [width, height] = [cut.half_width_mm, cut.half_height_mm].map(|half| shown.short_length(2.0 * half));
    let round = if cut.rectangle { "rectangle " } else { "" };
    format!("{round}{width} × {height}")
}

/// The way from the left along a curved face, where it shows another length.
fn along_face(cut: &Cut, shown: Quantities) -> String {
    let [flat, along] = [cut.from_left_mm, cut.from_left_developed_mm].map(|mm| shown.short_length(mm));
    if along == flat { String::new() } else { along }
}

fn open_to(cut: &Cut) -> String {
    cut.open_to.iter().map(|&side| words::tile_side(side)).collect::<Vec<_>>().join(", ")
}
