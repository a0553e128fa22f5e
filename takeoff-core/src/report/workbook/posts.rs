//! The sheet of posts.
use rust_xlsxwriter::XlsxError;

use super::super::words;
use super::measure::{in_units, length};
use super::rows::{Column, sheet_of_rows};
use super::styles::{Kind, Look};
use super::{Book, Sheet};
use crate::report::document::{PostTakeoff, SlopeTakeoff};

type Row<'t> = (&'t SlopeTakeoff, &'t PostTakeoff);

/// One row a post, slope by slope in the job's order.
pub(super) fn posts(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let takeoff = book.takeoff;
    let unit = |what| in_units(what, takeoff.display);
    let mm = |mm| length(mm, takeoff.display);
    let (text, size) = (Look::Text, Look::Number(Kind::Length));
    let columns: Vec<Column<Row>> = vec![
        Column::new("slope", 13.0, text, |(slope, _): Row| slope.name.as_str()),
        Column::new("post", 8.0, text, |(_, post): Row| post.name.as_str()),
        Column::new("assembly", 12.0, text, |(_, post): Row| post.assembly.as_str()),
        Column::new(unit("along the eave, u"), 12.0, size, |(_, post): Row| mm(post.u_mm)),
        Column::new(unit("up the slope, v"), 12.0, size, |(_, post): Row| mm(post.v_mm)),
        Column::new("meets", 27.0, text, |(_, post): Row| words::situation(post.situation)),
        Column::new("tile to replace", 8.0, text, |(_, post): Row| post.severed),
        Column::new("tiles cut", 16.0, text, |(_, post): Row| post.cuts.join("; ")),
        Column::new(unit("tolerance"), 9.0, size, |(_, post): Row| mm(least_margin(post))),
        Column::new(unit("better if moved up by"), 12.0, size, |(_, post): Row| {
            post.nearest.as_ref().map(|nearest| mm(nearest.up_mm))
        }),
        Column::new("deck flashing", 10.0, text, |(_, post): Row| words::deck_method(post.deck.method)),
        Column::new("patch", 8.0, text, |(_, post): Row| post.deck.patch.as_deref()),
        Column::new(
            "tile flashing",
            10.0,
            text,
            |(_, post): Row| if post.top.passes { "passes" } else { "short" },
        ),
        Column::new("rafter", 7.0, Look::Number(Kind::Count), |(_, post): Row| {
            post.support.as_ref().map(|support| support.rafter)
        }),
        Column::new(unit("off its centre"), 9.0, size, |(_, post): Row| {
            post.support.as_ref().map(|support| mm(support.off_centre_mm))
        }),
        Column::new("blocking", 9.0, text, |(_, post): Row| {
            post.support.as_ref().map(|support| support.blocked)
        }),
    ];
    let rows: Vec<Row> =
        takeoff.slopes.iter().flat_map(|slope| slope.posts.iter().map(move |post| (slope, post))).collect();
    let note = "Where each post stands on the deck and what it meets there. Lengths are rounded for reading; \
                posts.csv and takeoff.json have them whole. The least margin is how far the post may land off its \
                place, whichever way, before anything changes.";
    sheet_of_rows(book, "posts", note, &rows, columns)
}

fn least_margin(post: &PostTakeoff) -> f64 {
    let margin = &post.margin;
    margin.left_mm.min(margin.right_mm).min(margin.down_mm).min(margin.up_mm)
}
