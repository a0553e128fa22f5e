//! The posts.
use super::super::quantity::Quantities;
use super::super::words;
use super::grid::Grid;
use super::section::Section;
use crate::report::document::{DeckWork, Nearest, PostTakeoff, Support, Takeoff};

/// A table a slope, a row a post.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.counts.posts == 0 {
        return None;
    }
    let shown = Quantities(takeoff.display);
    let section = Section::new("posts", "Posts", |html| {
        html.tag("p").text(
            "Along the eave and up the slope, on the deck. Tolerance: how far a post may land off its place before its cut or \
             deck work changes, on the tightest side. Tuck: how far the tile flashing goes up under the next course.",
        );
        for slope in &takeoff.slopes {
            Grid::new(format!("Posts of {}", slope.name), &slope.posts)
                .name("post", |post| post.name.clone())
                .words_if_several("assembly", |post| post.assembly.clone())
                .number("along", |post| shown.length(post.u_mm))
                .number("up", |post| shown.length(post.v_mm))
                .words("meets", meets)
                .tiles("cuts", |post| &post.cuts)
                .words("tolerance", |post| least_margin(post, shown))
                .words("deck flashing", |post| deck(&post.deck))
                .number("tuck", |post| {
                    post.top.tuck_mm.map_or("at the ridge".to_owned(), |tuck| shown.short_length(tuck))
                })
                .words("rafter", |post| post.support.as_ref().map(|on| rafter(on, shown)).unwrap_or_default())
                .words("move to", |post| {
                    post.nearest.as_ref().map(|place| better(place, shown)).unwrap_or_default()
                })
                .write(html);
        }
    });
    Some(section.on_new_page())
}

fn meets(post: &PostTakeoff) -> String {
    let severed = if post.severed { ", a tile to replace" } else { "" };
    format!("{}{severed}", words::situation(post.situation))
}

fn least_margin(post: &PostTakeoff, shown: Quantities) -> String {
    let margin = &post.margin;
    let ways = [
        (margin.left_mm, "left"),
        (margin.right_mm, "right"),
        (margin.down_mm, "down"),
        (margin.up_mm, "up"),
    ];
    let least = ways.into_iter().min_by(|a, b| a.0.total_cmp(&b.0));
    least.map(|(mm, way)| format!("{} {way}", shown.short_length(mm))).unwrap_or_default()
}

fn deck(deck: &DeckWork) -> String {
    let method = words::deck_method(deck.method);
    deck.patch.as_ref().map_or(method.to_owned(), |patch| format!("{method}: {patch}"))
}

fn rafter(support: &Support, shown: Quantities) -> String {
    let off = shown.short_length(support.off_centre_mm.abs());
    match (support.on_rafter, support.blocked) {
        (true, _) => format!("R{}", support.rafter),
        (false, true) => format!("blocking, {off} off R{}", support.rafter),
        (false, false) => format!("no wood, {off} off R{}", support.rafter),
    }
}

fn better(place: &Nearest, shown: Quantities) -> String {
    let way = if place.up_mm < 0.0 { "down" } else { "up" };
    format!("{way} {}: {}", shown.short_length(place.up_mm.abs()), words::situation(place.situation))
}
