//! Search for short sections: exhaustive for few pieces, otherwise the best of several heuristics.
mod diving;
pub(super) mod exact;
mod greedy;
mod local_search;

use super::item_types::{Demand, ItemType, Orientation, all_orientations};
use super::pattern::{Pattern, total_length};
use diving::dive_by_groups;
use greedy::{FirstCut, Priority};
use local_search::recut_worst_sections;

/// The shortest of the heuristic plans, the first of equals, improved by local search. The search stops as soon as the
/// length meets the lower bound.
pub(super) fn shortest_sections(
    items: &[ItemType],
    demand: &[u64],
    width: i64,
    max_length: i64,
    bound: i64,
) -> Vec<Pattern> {
    let priorities = [
        Priority::by(items, |orientation| (orientation.length, orientation.width)),
        Priority::by(items, |orientation| (orientation.width, orientation.length)),
        Priority::by(items, Orientation::area),
    ];
    let first_cuts = [FirstCut::Along, FirstCut::Across];
    let greedy = priorities.iter().flat_map(|priority| first_cuts.map(|first_cut| (priority, first_cut)));
    let greedy = greedy.map(|(priority, first_cut)| priority.sections(width, first_cut, demand));

    let longest_piece = all_orientations(items).map(|(_, orientation)| orientation.length).max().unwrap_or(0);
    // Sections that hold one piece along the roll keep the linear program small; three leave room to combine lengths.
    let section_lengths = [1, 3].map(|pieces| longest_piece.saturating_mul(pieces).min(max_length));
    let diving = section_lengths.into_iter().map(|length| dive_by_groups(items, demand, width, length));

    let mut best: Option<(i64, Vec<Pattern>)> = None;
    for sections in greedy.chain(diving) {
        let length = total_length(&sections);
        if best.as_ref().is_none_or(|(shortest, _)| length < *shortest) {
            best = Some((length, sections));
        }
        if best.as_ref().is_some_and(|(shortest, _)| *shortest <= bound) {
            break;
        }
    }
    let (length, sections) = best.unwrap_or_default();
    if length > bound { recut_worst_sections(items, sections, width, max_length) } else { sections }
}

/// Number of pieces of each item type in some sections.
fn item_counts(items: &[ItemType], sections: &[Pattern]) -> Demand {
    let mut counts = vec![0; items.len()];
    sections.iter().for_each(|section| section.count_items(&mut counts));
    counts
}
