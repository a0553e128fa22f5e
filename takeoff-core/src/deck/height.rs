//! Heights over the deck at a post: does it come out of the tile?
use super::codes::{CONE_DOES_NOT_CLEAR, POST_DOES_NOT_CLEAR};
use crate::geometry::Ellipse;
use crate::model::{Display, Post, Problem};
use crate::roof::Site;
use crate::units::Length;

/// The heights over the deck at a post, normal to the deck.
///
/// # Rule
///
/// The tile's top is taken as the top of the batten, plus the thickness of every course that lies over the
/// opening's centre, plus the whole rise of the tile's profile: the opening is wider than a point and the tile
/// tilts, so the highest place is what a cone must clear. Side laps are not counted. Without battens the tile
/// lies on the deck.
///
/// # Example
///
/// Batten 3/4 in, tile 1 in thick with a 2 in roll: in the head lap, two layers, the tile's top is at 4 3/4 in.
/// A post of 7 in stands free by 2 1/4 in.
pub fn height_stack(site: &Site, post: &Post, opening: &Ellipse) -> HeightStack {
    let tile = &site.slope.tile;
    let batten = site.slope.battens.as_ref().map_or(Length::ZERO, |battens| battens.height);
    let layers = site.grid.layers_at(opening.centre.v);
    let thickness = Length::from_nm(tile.thickness.nm() * layers as i64);
    let rise = if layers == 0 { Length::ZERO } else { tile.profile.greatest_rise() };
    let top = batten + thickness + rise;
    let assembly = &post.assembly;
    HeightStack {
        batten,
        layers,
        tile: top,
        cone: assembly.deck_flashing.cone_height,
        post: assembly.post_height,
    }
}

/// Findings where the cone or the post does not come out above the tile.
pub fn too_low(post: &Post, stack: &HeightStack, display: Display) -> Vec<Problem> {
    let parts = [
        ("cone", CONE_DOES_NOT_CLEAR, stack.cone, "take a taller deck flashing"),
        ("post", POST_DOES_NOT_CLEAR, stack.post, "take a taller post"),
    ];
    let short = parts.into_iter().filter_map(|(part, code, top, mend)| {
        let below = display.length(stack.tile - top.filter(|&top| top <= stack.tile)?);
        let message = format!("the {part} of `{}` ends {below} below the top of the tile", post.name);
        Some(Problem::new(code, message, mend, &post.path))
    });
    short.collect()
}

/// Heights over the deck at the post.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeightStack {
    /// Top of the batten.
    pub batten: Length,
    /// Layers of tile over the post's point.
    pub layers: u64,
    /// Top of the tile.
    pub tile: Length,
    /// Top of the cone, if given.
    pub cone: Option<Length>,
    /// Top of the post, if given.
    pub post: Option<Length>,
}

impl HeightStack {
    /// Free post above the tile, if its height is given.
    pub fn free_post(&self) -> Option<Length> {
        self.post.map(|post| post - self.tile)
    }
}
