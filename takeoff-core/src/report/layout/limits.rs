//! Cost of each limit.
use std::cmp::Reverse;

use super::super::quantity::Quantities;
use super::super::screen::Page;
use super::at_fault;
use crate::layout::{Constraint, ConstraintPrice, Layout};

pub(super) fn show(page: &mut Page, layout: &Layout, shown: Quantities) {
    if layout.arrays.is_empty() || layout.constraints.is_empty() {
        return;
    }
    let is_free = |price: &&ConstraintPrice| price.saves.amount().is_zero() && price.fewer_faults == 0;
    let (free, mut dear): (Vec<_>, Vec<_>) = layout.constraints.iter().partition(is_free);
    dear.sort_by_key(|price| Reverse((price.fewer_faults, price.saves)));
    page.head("What each limit costs, the others as they are");
    for price in dear {
        page.text("  ", "      ", &price_line(price, &layout.currency, shown));
    }
    if !free.is_empty() {
        let names: Vec<String> = free.iter().map(|price| eased(price, shown)).collect();
        page.text("  ", "      ", &format!("Nothing would be saved by {}.", names.join("; or by ")));
    }
}

/// `1 in more of span would save 154.90 USD`.
fn price_line(price: &ConstraintPrice, currency: &str, shown: Quantities) -> String {
    let saves = price.saves.amount();
    let money = match saves {
        saves if saves.is_zero() => None,
        saves if saves.is_sign_negative() => Some(format!("cost {} {currency}", saves.abs())),
        saves => Some(format!("save {saves} {currency}")),
    };
    let faults = match price.fewer_faults {
        0 => None,
        fewer if fewer < 0 => Some(format!("have {} more", at_fault(fewer.unsigned_abs()))),
        fewer => Some(format!("have {} fewer", at_fault(fewer.unsigned_abs()))),
    };
    let would: Vec<String> = [money, faults].into_iter().flatten().collect();
    let mut eased = eased(price, shown);
    if let Some(first) = eased.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    format!("{eased} would {}.", would.join(" and "))
}

/// The limit, given way: by so much, or wholly.
fn eased(price: &ConstraintPrice, shown: Quantities) -> String {
    let by = price.by_mm.map_or(String::new(), |by| shown.short_length(by));
    match price.constraint {
        Constraint::GreatestSpan => format!("{by} more of span"),
        Constraint::GreatestOverhang => format!("{by} more of overhang"),
        Constraint::ClampWindows => {
            format!("clamp windows {by} wider at both ends (as far as modules allow)")
        }
        Constraint::Shift => format!("{by} more of shift each way (where there is room)"),
        Constraint::Setbacks => format!("setbacks {by} shorter"),
        Constraint::LeastDistance => format!("posts up to {by} nearer to each other"),
        Constraint::LeastMargin => format!("a tolerance up to {by} smaller"),
        Constraint::Zones => "no zones of shorter spans".to_owned(),
        Constraint::Stagger => "no stagger between the rails".to_owned(),
        Constraint::NoBlocking => "blocking allowed below every array".to_owned(),
        Constraint::FixedPosts => "no fixed posts".to_owned(),
    }
}
