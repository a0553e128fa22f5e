//! Single posts that had better move.
use super::super::quantity::Quantities;
use super::super::screen::Page;
use super::super::words;
use crate::layout::{Layout, Nudge};

pub(super) fn show(page: &mut Page, layout: &Layout, shown: Quantities) {
    if layout.nudges.is_empty() {
        return;
    }
    page.head(&format!("Posts without rails to move: {}", layout.nudges.len()));
    // Posts with the same to be done are one line.
    let mut groups: Vec<(&Nudge, Vec<&str>)> = Vec::new();
    for nudge in &layout.nudges {
        match groups.iter_mut().find(|(first, _)| is_alike(first, nudge)) {
            Some((_, posts)) => posts.push(&nudge.post),
            None => groups.push((nudge, vec![&nudge.post])),
        }
    }
    for (nudge, posts) in groups {
        page.text("  ", "      ", &nudge_line(nudge, &posts, &layout.currency, shown));
    }
    page.text("  ", "  ", "These are not in the laid job: move them in the job file if you like.");
}

fn is_alike(one: &Nudge, other: &Nudge) -> bool {
    let of = |nudge: &Nudge| {
        let Nudge { up_mm, v_mm, situation, better, patched, better_patched, fails, saves, .. } = nudge;
        (*up_mm, *v_mm, *situation, *better, *patched, *better_patched, *fails, *saves)
    };
    one.slope == other.slope && of(one) == of(other)
}

/// `south: move A7 up 1 3/16 in along its rafter, to v 3 ft 2 in: one hole instead of a notch across two tiles; saves
/// 23.10 USD`.
fn nudge_line(nudge: &Nudge, posts: &[&str], currency: &str, shown: Quantities) -> String {
    let Nudge { slope, up_mm, v_mm, situation, better, patched, better_patched, fails, saves, .. } = nudge;
    let way = if *up_mm > 0.0 { "up" } else { "down" };
    let by = shown.short_length(up_mm.abs());
    let each = if posts.len() > 1 { "each " } else { "" };
    let (met, there) = (words::met(*situation), words::met(*better));
    let work = if met == there { format!("{there} as before") } else { format!("{there} instead of {met}") };
    let patch = match (patched, better_patched) {
        (true, false) => Some("a patch is no longer needed".to_owned()),
        (false, true) => Some("a patch is needed".to_owned()),
        _ => None,
    };
    let fails = fails.then(|| {
        "where it stands a tile can't be cut in one piece or a check fails; there neither does".to_owned()
    });
    let amount = saves.amount();
    let saves = match amount {
        amount if amount.is_sign_negative() => format!("{each}costs {} {currency} more", amount.abs()),
        amount => format!("{each}saves {amount} {currency}"),
    };
    let parts: Vec<String> = [Some(work), patch, fails, Some(saves)].into_iter().flatten().collect();
    let (posts, v) = (posts.join(", "), shown.length(*v_mm));
    format!("{slope}: move {posts} {way} {by}, {each}along its rafter, to v {v}: {}.", parts.join("; "))
}
