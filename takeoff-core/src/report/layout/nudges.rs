//! Single posts that had better move.
use super::super::quantity::Quantities;
use super::super::screen::Page;
use super::super::words;
use crate::layout::{Layout, Nudge};

pub(super) fn show(page: &mut Page, layout: &Layout, shown: Quantities) {
    if layout.nudges.is_empty() {
        return;
    }
    page.head(&format!("Posts without rails that had better move: {}", layout.nudges.len()));
    for nudge in &layout.nudges {
        page.text("  ", "      ", &told(nudge, &layout.currency, shown));
    }
    page.text("  ", "  ", "These are not in the laid job: move them in the job file if you like.");
}

/// `south: move A7 up 1 3/16 in along its rafter, to v 3 ft 2 in: one hole instead of a notch across two tiles; saves
/// 23.10 USD`.
fn told(nudge: &Nudge, currency: &str, shown: Quantities) -> String {
    let Nudge { slope, post, up_mm, v_mm, situation, better, patched, better_patched, fails, saves } = nudge;
    let way = if *up_mm > 0.0 { "up" } else { "down" };
    let by = shown.short_length(up_mm.abs());
    let (met, there) = (words::met(*situation), words::met(*better));
    let work = if met == there { format!("{there} as before") } else { format!("{there} instead of {met}") };
    let patch = match (patched, better_patched) {
        (true, false) => Some("a patch is no longer needed".to_owned()),
        (false, true) => Some("a patch is needed".to_owned()),
        _ => None,
    };
    let fails = fails.then(|| "where it is a tile is severed or a check fails, there not".to_owned());
    let amount = saves.amount();
    let saves = match amount {
        amount if amount.is_sign_negative() => format!("costs {} {currency} more", amount.abs()),
        amount => format!("saves {amount} {currency}"),
    };
    let parts: Vec<String> = [Some(work), patch, fails, Some(saves)].into_iter().flatten().collect();
    let v = shown.length(*v_mm);
    format!("{slope}: move {post} {way} {by} along its rafter, to v {v}: {}.", parts.join("; "))
}
