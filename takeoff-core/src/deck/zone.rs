//! Where work is done on the deck for a post.
use super::{Method, PatchId, bands};
use crate::geometry::{Point, Rect, grid, half};
use crate::model::Post;
use crate::roof::Site;

/// The deck flashing of a post as it lies: half its width to each side, `down` and `up` from the post's point.
///
/// # Example
///
/// A flashing 10 in wide, 4 in down and 7 in up, the post at `u` 56 in, `v` 37 in: from 51 to 61 in along the
/// eave, from 33 to 44 in up the slope.
pub fn flashing(post: &Post) -> Rect {
    let flashing = &post.assembly.deck_flashing;
    let (Point { u, v }, aside) = (Point::from(post.at), half(flashing.width));
    Rect::new(u - aside, v - grid(flashing.down), u + aside, v + grid(flashing.up))
}

/// The patch that a patched post would have by itself; `None` for others.
///
/// It runs from the cone's centre up under the sheet above by the underlap, or, where there is no lap line above,
/// to the field's edge; the side margin is added to the flashing's width on both sides. One that crosses the
/// field's edge is kept whole: it is trimmed on the roof.
///
/// # Example
///
/// The flashing above is patched up to a lap line at 68 in, underlap and side margin 4 in: from 47 to 65 in along
/// the eave, from 37 to 72 in up the slope.
pub fn own_patch(site: &Site, post: &Post, method: &Method) -> Option<Rect> {
    let upper = match *method {
        Method::Tucked { .. } | Method::ThreeCourse => return None,
        Method::Patched { line } => line + grid(site.practice.patch_underlap),
        Method::PatchedToEdge { edge } => edge,
    };
    let Point { u, v } = Point::from(post.at);
    let aside = half(post.assembly.deck_flashing.width) + grid(site.practice.patch_side_margin);
    Some(Rect::new(u - aside, v, u + aside, upper))
}

/// The deck work of a post: the bounding rectangle of its flashing and its own patch or bands.
pub fn deck_area(site: &Site, post: &Post, method: &Method) -> Rect {
    let bands = (*method == Method::ThreeCourse).then(|| bands(post, site.practice.three_course.mesh_width));
    let over = own_patch(site, post, method).into_iter().chain(bands.into_iter().flatten());
    over.fold(flashing(post), |area, rect| area.union(&rect))
}

/// The work zone of a post: its deck work grown by the clearance that hands need.
pub fn work_zone(site: &Site, post: &Post, method: &Method) -> Rect {
    deck_area(site, post, method).grown(grid(site.practice.hand_clearance))
}

/// The work on the deck at one post; `patch` is the patch over it, if it has one.
pub fn deck_work(site: &Site, post: &Post, method: &Method, patch: Option<PatchId>) -> DeckWork {
    DeckWork { method: *method, patch, flashing: flashing(post), zone: work_zone(site, post, method) }
}

/// The work on the deck at one post.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DeckWork {
    /// Tucked, patched or three-course, and the lap line that governs.
    pub method: Method,
    /// The patch over it, if it has one.
    pub patch: Option<PatchId>,
    /// The flashing as it lies.
    pub flashing: Rect,
    /// The work zone.
    pub zone: Rect,
}
