//! Place of each array, rail by rail, and its next best places.
use super::super::quantity::Quantities;
use super::super::screen::Page;
use super::super::words;
use super::at_fault;
use crate::layout::{ArrayLayout, Layout, RailLayout, RailPost, RunnerUp};

pub(super) fn show(page: &mut Page, layout: &Layout, shown: Quantities) {
    for array in &layout.arrays {
        let place = shown.ways([array.right_mm, array.up_mm]);
        let goes = place.map_or("leave it where it is".to_owned(), |ways| format!("move it {ways}"));
        page.head(&format!("{}: {goes}", name(array)));
        let (u, v) = (shown.length(array.u_mm), shown.length(array.v_mm));
        let corner = format!("The lower left corner of its lowest left module goes to u {u}, v {v}.");
        page.text("  ", "  ", &corner);
        page.text("  ", "  ", &cost(array, &layout.currency));
        faults(array, shown).iter().for_each(|fault| page.text("  ", "  ", fault));
        let head = format!("  rail  {:>16}  {:>11}  {:>10}  ", "v", "clamp", layout.currency);
        page.text(&head, "", "posts, and what they meet");
        array.rails.iter().for_each(|of| rail(page, of, shown));
    }
    if !layout.arrays.is_empty() {
        legend(page, layout);
    }
}

fn name(array: &ArrayLayout) -> String {
    format!("{} on {}", array.array, array.slope)
}

/// Cost of its posts, and saving of the move.
fn cost(array: &ArrayLayout, currency: &str) -> String {
    let posts = array.rails.iter().map(|rail| rail.posts.len() as u64).sum();
    let here = format!(
        "{}: {} {currency}, the sum of single-post costs.",
        words::count(posts, "post", "posts"),
        array.additive_cost
    );
    let (Some(unmoved), Some(saves)) = (&array.unmoved, array.saves()) else {
        return format!("{here} Where the array is now, no rails and posts keep all limits.");
    };
    if !array.moves() {
        return here;
    }
    let faults = u64::from(unmoved.failing + unmoved.thin);
    let faults = if faults > 0 { format!(", with {}", at_fault(faults)) } else { String::new() };
    format!(
        "{here} Where the array is now, with rails and posts at their best there, {} {currency}{faults}: the move \
         saves {saves} {currency}.",
        unmoved.additive_cost
    )
}

/// Tolerance of its posts, and posts that fall short.
fn faults(array: &ArrayLayout, shown: Quantities) -> Vec<String> {
    let mut notes = Vec::new();
    if array.thin == 0 {
        let margin = shown.short_length(array.least_margin_mm);
        notes.push(format!(
            "Each post may land up to {margin} higher or lower before its cut or deck work changes."
        ));
    } else {
        let posts = words::count(u64::from(array.thin), "post stands", "posts stand");
        notes.push(format!(
            "{posts} with less than the tolerance on one side: no better place keeps all limits."
        ));
    }
    if array.failing > 0 {
        let posts = words::count(
            u64::from(array.failing),
            "post cuts a tile beyond repair or fails",
            "posts cut a tile beyond repair or fail",
        );
        notes.push(format!("{posts} a check: no better place keeps all limits."));
    }
    if array.yielded {
        notes.push(
            "It keeps away from arrays laid before it: all of them together may cost less elsewhere."
                .to_owned(),
        );
    }
    notes
}

fn rail(page: &mut Page, rail: &RailLayout, shown: Quantities) {
    let (v, clamp) = (shown.length(rail.v_mm), shown.short_length(rail.clamp_mm));
    let first = format!("  {:>4}  {v:>16}  {clamp:>11}  {:>10}  ", rail.rail, rail.additive_cost.to_string());
    page.text(&first, &" ".repeat(51), &posts(&rail.posts));
}

/// `2, 3, 5: one tile, hole, tucked; 15/16: two courses, patched`.
fn posts(posts: &[RailPost]) -> String {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for post in posts {
        let met = format!("{}, {}", words::situation(post.situation), words::deck_method(post.method));
        match groups.iter_mut().find(|(of, _)| *of == met) {
            Some((_, stands)) => stands.push(stands_on(post)),
            None => groups.push((met, vec![stands_on(post)])),
        }
    }
    let groups: Vec<String> =
        groups.iter().map(|(met, stands)| format!("{}: {met}", stands.join(", "))).collect();
    groups.join("; ")
}

/// The rafter of a post; both where it is on a board between two; of a fixed post its name.
fn stands_on(post: &RailPost) -> String {
    match post.rafter {
        Some(rafter) if post.on_board => format!("{rafter}/{}", rafter + 1),
        Some(rafter) => rafter.to_string(),
        None => format!("`{}`", post.name),
    }
}

/// Key to the lines of the rails.
fn legend(page: &mut Page, layout: &Layout) {
    let posts = || layout.arrays.iter().flat_map(|array| &array.rails).flat_map(|rail| &rail.posts);
    let boards = posts().any(|post| post.on_board);
    let fixed = posts().any(|post| post.rafter.is_none());
    let board = if boards { "; 3/4 is on a board between two" } else { "" };
    let fixed = if fixed { "; a name is that of a fixed post" } else { "" };
    page.head("How to read this");
    page.text(
        "  ",
        "  ",
        &format!(
            "v goes up the slope and u to the right; a clamp is so far above the lower edge of its module. Posts go \
             by their rafter, counted from the left{board}{fixed}."
        ),
    );
}

/// The runners-up.
pub(super) fn next_best(page: &mut Page, layout: &Layout, shown: Quantities) {
    if layout.arrays.iter().all(|array| array.runners_up.is_empty()) {
        return;
    }
    page.head("Next best, each of another cost");
    for array in &layout.arrays {
        for other in &array.runners_up {
            page.text(
                "  ",
                "      ",
                &format!("{}: {}", name(array), runner_up(other, &layout.currency, shown)),
            );
        }
    }
}

fn runner_up(other: &RunnerUp, currency: &str, shown: Quantities) -> String {
    let RunnerUp { right_mm, up_mm, posts, more, failing, thin, .. } = other;
    let ways = shown.ways([*right_mm, *up_mm]).unwrap_or("where it is".to_owned());
    let posts = words::count(*posts, "post", "posts");
    let faults = u64::from(failing + thin);
    let faults = if faults > 0 { format!(", {}", at_fault(faults)) } else { String::new() };
    let by = more.amount();
    let more = if by.is_sign_negative() { "less" } else { "more" };
    format!("{ways}, {posts}{faults}: {} {currency} {more}", by.abs())
}
