//! Work and cost, before and after.
use rust_decimal::Decimal;

use super::super::findings::by_code;
use super::super::screen::Page;
use crate::layout::{Figures, Layout, SpentOn};

pub(super) fn show(page: &mut Page, layout: &Layout) {
    let now = if layout.arrays.is_empty() { "as it is" } else { "laid out" };
    let after = rows(&layout.after, &layout.currency);
    if let Some(before) = &layout.before {
        page.head("Work and cost, before and after");
        line(page, &["as it is", now, "change"], "");
        for ((was, _), (is, what)) in rows(before, &layout.currency).iter().zip(&after) {
            let by = is - was;
            let change = if by.is_zero() { String::new() } else { format!("{by:+}") };
            line(page, &[&was.to_string(), &is.to_string(), &change], what);
        }
    } else {
        page.head("Work and cost");
        line(page, &[now], "");
        after.iter().for_each(|(is, what)| line(page, &[&is.to_string()], what));
    }
    page.text("  ", "  ", SHARING);
    if !layout.arrays.is_empty() {
        page.text("  ", "  ", RULE);
    }
    if !layout.before_breaks.is_empty() {
        page.text("  ", "  ", "As it is, the job does not keep to its own limits:");
    }
    for (code, group) in by_code(&layout.before_breaks) {
        let first = group.first().map_or("", |problem| &problem.message);
        let like = if group.len() > 1 { ", the first" } else { "" };
        page.text("  - ", "    ", &format!("{code} ({}){like}: {first}.", group.len()));
    }
}

const SHARING: &str = "What sharing saves is tiles and patches that posts near each other need once only.";

const RULE: &str = "A layout does not look for that. It has as few posts as it can that sever a tile or fail a check, then as few as \
     it can that stand too near to a change of their work; then it makes the cost of each post by itself, added up, \
     least. The price of the bid has whole packs, and what the bid adds.";

/// Numbers in columns, and what they are.
fn line(page: &mut Page, numbers: &[&str], what: &str) {
    let columns: String = numbers.iter().map(|number| format!("{number:>12}")).collect();
    page.text(&format!("{columns}  "), &" ".repeat(columns.len() + 2), what);
}

fn rows(figures: &Figures, currency: &str) -> Vec<(Decimal, String)> {
    let SpentOn { hardware, labour, patches, blocking, breakage } = figures.spent_on;
    let counts = [
        (figures.posts, "posts"),
        (figures.holes, "tiles with a hole"),
        (figures.notches, "tiles with a notch"),
        (figures.corners, "tiles with a corner notch"),
        (figures.severed, "tiles that can't be cut in one piece"),
        (figures.removed, "tiles removed and reset, cut ones included"),
        (figures.loosened, "tiles raised, not removed"),
        (figures.patches, "patches"),
        (figures.boards, "pieces of blocking"),
    ];
    let amounts = [
        (Some(figures.additive_cost), "sum of single-post costs"),
        (Some(hardware), "of it hardware"),
        (Some(labour), "of it labour"),
        (Some(patches), "of it felt of patches"),
        (Some(blocking), "of it blocking"),
        (Some(breakage), "of it tiles that break, in the mean"),
        (Some(figures.shared_cost), "all posts together"),
        (Some(figures.gap), "what sharing saves"),
        (figures.price, "price of the bid"),
    ];
    let counts = counts.into_iter().map(|(count, what)| (Decimal::from(count), what.to_owned()));
    let amounts = amounts
        .into_iter()
        .filter_map(|(amount, what)| Some((amount?.amount(), format!("{currency}, {what}"))));
    counts.chain(amounts).collect()
}
