//! What the takeoff says about one cut.
use super::Cut;
use super::post_row::name_of;
use crate::cuts::{Footprint, Shape, SlopeCut, removed};
use crate::geometry::to_mm;
use crate::roof::{Site, piece_name};

/// The row of one cut; its dimensions are in the tile's own frame, from nose and left edge, face up.
pub(super) fn cut_row(site: &Site, cut: &SlopeCut) -> Cut {
    let judged = &cut.judged;
    let tile = site.grid.footprint(judged.tile);
    let bounds = judged.shape.bounds();
    let gone = removed(judged);
    // Twice the centre is whole on the grid.
    let middle = |low: i64, high: i64, from: i64| to_mm(low + high - 2 * from) / 2.0;
    let from_left_mm = middle(bounds.left, bounds.right, tile.left);
    Cut {
        tile: name_of(site, cut),
        piece: piece_name(site.slope, judged.tile.part),
        course: u64::from(judged.tile.course) + 1,
        column: site.grid.column_number(judged.tile, site.field.bounds()),
        kind: judged.kind(),
        posts: cut.posts.iter().map(|&post| site.slope.posts[post].name.clone()).collect(),
        edge_tile: matches!(judged.footprint, Footprint::Edge { .. }),
        area_mm2: gone.area_mm2,
        blade_path_mm: gone.path_mm,
        from_left_mm,
        from_left_developed_mm: site.slope.tile.profile.developed(from_left_mm),
        from_nose_mm: middle(bounds.lower, bounds.upper, tile.lower),
        half_width_mm: to_mm(bounds.right - bounds.left) / 2.0,
        half_height_mm: to_mm(bounds.upper - bounds.lower) / 2.0,
        rectangle: matches!(judged.shape, Shape::Rect(_)),
        open_to: judged.open_to(&tile),
    }
}
