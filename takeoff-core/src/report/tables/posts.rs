//! The posts.
use super::super::quantity::Quantities;
use super::super::words;
use super::{Table, listed, with_slope};
use crate::report::document::Takeoff;

/// One row a post, slope by slope in the job's order.
pub fn posts(takeoff: &Takeoff) -> Table<'_> {
    let shown = Quantities(takeoff.display);
    Table::from_rows(with_slope(takeoff, |slope| &slope.posts))
        .text("slope", |(slope, _)| slope.name.as_str())
        .text("post", |(_, post)| post.name.as_str())
        .text("assembly", |(_, post)| post.assembly.as_str())
        .number("u_mm", |(_, post)| post.u_mm)
        .number("v_mm", |(_, post)| post.v_mm)
        .text("u", |(_, post)| shown.length(post.u_mm))
        .text("v", |(_, post)| shown.length(post.v_mm))
        .number_if_any("east_mm", |(_, post)| post.world_mm.map(|[east, _, _]| east))
        .number_if_any("north_mm", |(_, post)| post.world_mm.map(|[_, north, _]| north))
        .number_if_any("up_mm", |(_, post)| post.world_mm.map(|[_, _, up]| up))
        .number("opening_half_width_mm", |(_, post)| post.opening.half_width_mm)
        .number("opening_half_height_mm", |(_, post)| post.opening.half_height_mm)
        .number("least_clearance_mm", |(_, post)| post.opening.least_clearance_mm)
        .text("situation", |(_, post)| words::situation(post.situation))
        .flag("severed", |(_, post)| post.severed)
        .whole("tiles_cut", |(_, post)| post.cuts.len())
        .text("cuts", |(_, post)| listed(&post.cuts))
        .number("margin_left_mm", |(_, post)| post.margin.left_mm)
        .number("margin_right_mm", |(_, post)| post.margin.right_mm)
        .number("margin_down_mm", |(_, post)| post.margin.down_mm)
        .number("margin_up_mm", |(_, post)| post.margin.up_mm)
        .number_if_any("nearest_up_mm", |(_, post)| post.nearest.as_ref().map(|nearest| nearest.up_mm))
        .number_if_any("nearest_v_mm", |(_, post)| post.nearest.as_ref().map(|nearest| nearest.v_mm))
        .text_if_any("nearest_v", |(_, post)| post.nearest.as_ref().map(|nearest| shown.length(nearest.v_mm)))
        .text_if_any("nearest_situation", |(_, post)| {
            post.nearest.as_ref().map(|nearest| words::situation(nearest.situation))
        })
        .text("deck_method", |(_, post)| words::deck_method(post.deck.method))
        .number_if_any("lap_line_mm", |(_, post)| post.deck.lap_line_mm)
        .flag("cut_around_cone", |(_, post)| post.deck.cut_around_cone)
        .text_if_any("patch", |(_, post)| post.deck.patch.as_deref())
        .whole_if_any("top_course", |(_, post)| post.top.course)
        .number("top_trimmed_mm", |(_, post)| post.top.trimmed_mm)
        .number_if_any("top_tuck_mm", |(_, post)| post.top.tuck_mm)
        .number("top_side_cover_mm", |(_, post)| post.top.side_cover_mm)
        .flag("top_passes", |(_, post)| post.top.passes)
        .number("batten_top_mm", |(_, post)| post.height.batten_mm)
        .whole("tile_layers", |(_, post)| post.height.layers)
        .number("tile_top_mm", |(_, post)| post.height.tile_mm)
        .number_if_any("cone_top_mm", |(_, post)| post.height.cone_mm)
        .number_if_any("post_top_mm", |(_, post)| post.height.post_mm)
        .number_if_any("free_post_mm", |(_, post)| post.height.free_post_mm)
        .whole_if_any("rafter", |(_, post)| post.support.as_ref().map(|support| support.rafter))
        .number_if_any("off_rafter_centre_mm", |(_, post)| {
            post.support.as_ref().map(|support| support.off_centre_mm)
        })
        .flag_if_any("on_rafter", |(_, post)| post.support.as_ref().map(|support| support.on_rafter))
        .flag_if_any("blocked", |(_, post)| post.support.as_ref().map(|support| support.blocked))
        .done()
}
