//! Local search: the most wasteful sections of a plan are cut anew.
use super::exact::{optimal_sections, split_count};
use super::item_counts;
use crate::cutting_stock::item_types::ItemType;
use crate::cutting_stock::pattern::{Pattern, total_length};

/// Up to this many splits of the pieces of some sections, these are cut anew by exhaustive search.
const MAX_EXACT_SPLITS: u64 = 1_000;
/// Number of sets of sections that are tried.
const MAX_ROUNDS: usize = 24;

/// Takes the most wasteful sections, as many at a time as an exhaustive search can handle, and replaces them where that
/// makes the plan shorter.
pub(super) fn recut_worst_sections(
    items: &[ItemType],
    mut sections: Vec<Pattern>,
    width: i64,
    max_length: i64,
) -> Vec<Pattern> {
    let mut finished = Vec::new();
    for _ in 0..MAX_ROUNDS {
        sections.sort_by_cached_key(|section| (waste_per_million(section, width), section.clone()));
        let mut selected = Vec::new();
        let mut counts = vec![0; items.len()];
        while let Some(section) = sections.pop() {
            section.count_items(&mut counts);
            selected.push(section);
            if split_count(&counts) > MAX_EXACT_SPLITS {
                break;
            }
        }
        // The section that exceeds the limit goes back.
        if selected.len() > 1
            && let Some(section) = selected.pop_if(|_| split_count(&counts) > MAX_EXACT_SPLITS)
        {
            counts = item_counts(items, &selected);
            sections.push(section);
        }
        if selected.len() < 2 || split_count(&counts) > MAX_EXACT_SPLITS {
            finished.extend(selected);
            continue;
        }
        let recut = optimal_sections(items, &counts, width, max_length);
        if total_length(&recut) < total_length(&selected) {
            sections.extend(recut);
        } else {
            finished.extend(selected);
        }
    }
    sections.extend(finished);
    sections
}

/// Offcuts' share of a section's area, in millionths.
fn waste_per_million(section: &Pattern, width: i64) -> i128 {
    let area = i128::from(section.size().0) * i128::from(width);
    (area - section.item_area()) * 1_000_000 / area.max(1)
}
