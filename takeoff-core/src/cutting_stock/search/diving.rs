//! Diving: from the fractional optimum of column generation to whole sections.
use super::exact::{optimal_sections, split_count};
use super::greedy::{GreedyFill, Priority};
use crate::cutting_stock::column_generation::cut_positions::Rounding;
use crate::cutting_stock::column_generation::grouping::Groups;
use crate::cutting_stock::column_generation::knapsack::Knapsack;
use crate::cutting_stock::column_generation::master::Master;
use crate::cutting_stock::item_types::ItemType;
use crate::cutting_stock::pattern::Pattern;

/// Up to this many splits of the remaining pieces, these are planned by exhaustive search.
const MAX_EXACT_SPLITS: u64 = 1_000;
/// Cut positions along a section; more make little difference.
const MAX_POSITIONS_ALONG: usize = 24;
/// Rounding error of the simplex method in the number of times that a section is cut.
const TIMES_TOLERANCE: f64 = 1e-3;

/// Sections for the whole demand, none longer than `max_length`.
///
/// # Method
///
/// The linear program says how many times each section is cut. The whole part of that number is cut, then the program
/// is solved for the remaining demand. Where every number is below 1, the section with the highest is cut once. Pieces
/// beyond the demand are dropped from a section, and the strip that is free beside it is filled greedily. The last few
/// pieces are planned by exhaustive search.
fn dive(items: &[ItemType], demand: &[u64], width: i64, max_length: i64) -> Vec<Pattern> {
    let mut remaining = demand.to_vec();
    let mut sections = Vec::new();
    let knapsack = Knapsack::new(items, max_length, width, MAX_POSITIONS_ALONG, Rounding::Up);
    let mut master = Master::new(&knapsack, max_length as f64, |_, _| 1.0);
    let priority = Priority::by(items, |orientation| orientation.width);
    let mut fill = GreedyFill::new(&priority);
    while split_count(&remaining) > MAX_EXACT_SPLITS {
        let fractional: Vec<f64> = remaining.iter().map(|&count| count as f64).collect();
        for (rank, (times, section)) in master.solve(&fractional).sections.into_iter().enumerate() {
            let whole = (times + TIMES_TOLERANCE) as u64;
            if whole == 0 && rank > 0 {
                break;
            }
            for _ in 0..whole.max(1) {
                let Some(section) = section.take_from(&mut remaining) else { break };
                sections.push(fill.top_up(section, width, &mut remaining));
            }
        }
    }
    sections.extend(optimal_sections(items, &remaining, width, max_length));
    sections.into_iter().flat_map(Pattern::into_sections).collect()
}

/// Sections for many item types, planned in groups of similar size.
///
/// A group is planned at the size of its largest member in each direction, so each of its places holds any member. The
/// largest members are placed first; the strip that is free beside a section is filled greedily.
pub(super) fn dive_by_groups(
    items: &[ItemType],
    demand: &[u64],
    width: i64,
    max_length: i64,
) -> Vec<Pattern> {
    let groups = Groups::new(items, demand);
    let group_items = groups.item_types(items, i64::max);
    let priority = Priority::by(items, |orientation| orientation.width);
    let mut fill = GreedyFill::new(&priority);
    let mut remaining = demand.to_vec();
    let mut sections = Vec::new();
    for section in dive(&group_items, &groups.demand(demand), width, max_length) {
        let section = section.map_items(&mut |group, orientation| {
            let index = group_items[group].orientations.iter().position(|other| *other == orientation)?;
            let member = groups.members[group].iter().copied().find(|&member| remaining[member] > 0)?;
            remaining[member] -= 1;
            Some((member, items[member].orientations[index]))
        });
        if let Some(section) = section {
            sections.extend(fill.top_up(section, width, &mut remaining).into_sections());
        }
    }
    sections
}
