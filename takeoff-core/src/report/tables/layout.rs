//! The posts of a layout.
use super::super::quantity::Quantities;
use super::super::words;
use super::Table;
use crate::layout::{ArrayLayout, Layout, RailLayout, RailPost};

/// One row a post of a rail: array by array in the job's order, rail by rail from the lowest, from left to right.
pub fn layout(layout: &Layout) -> Table<'_> {
    let shown = Quantities(layout.display);
    let rails = layout.arrays.iter().flat_map(|array| array.rails.iter().map(move |rail| (array, rail)));
    let posts = rails.flat_map(|(array, rail)| rail.posts.iter().map(move |post| Row { array, rail, post }));
    Table::from_rows(posts.collect())
        .text("slope", |row: Row<'_>| row.array.slope.as_str())
        .text("array", |row| row.array.array.as_str())
        .whole("rail", |row| row.rail.rail)
        .text("post", |row| row.post.name.as_str())
        .number("u_mm", |row| row.post.u_mm)
        .number("v_mm", |row| row.rail.v_mm)
        .text("u", |row| shown.length(row.post.u_mm))
        .text("v", |row| shown.length(row.rail.v_mm))
        .number("clamp_mm", |row| row.rail.clamp_mm)
        .text("clamp", |row| shown.short_length(row.rail.clamp_mm))
        .whole_if_any("rafter", |row| row.post.rafter)
        .flag("on_board", |row| row.post.on_board)
        .text("situation", |row| words::situation(row.post.situation))
        .text("deck_method", |row| words::deck_method(row.post.method))
        .done()
}

/// A post, its rail and its array.
#[derive(Clone, Copy)]
struct Row<'a> {
    array: &'a ArrayLayout,
    rail: &'a RailLayout,
    post: &'a RailPost,
}
