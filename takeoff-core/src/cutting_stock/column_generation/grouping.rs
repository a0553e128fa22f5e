//! Grouping: item types of similar size are planned as one, where there are too many to plan each on its own.
use crate::cutting_stock::item_types::{Demand, ItemType, Orientation};

/// Limit on groups, and so on the rows of the linear program.
const MAX_GROUPS: usize = 96;

/// A partition of the item types with demand.
pub(in crate::cutting_stock) struct Groups {
    /// Item types of each group, in ascending order, which is largest first.
    pub(in crate::cutting_stock) members: Vec<Vec<usize>>,
}

impl Groups {
    /// Groups of item types with the same number of orientations.
    ///
    /// The group that loses most area when its pieces count as large as its largest is split in two, until no group
    /// loses any or the limit is reached.
    pub(in crate::cutting_stock) fn new(items: &[ItemType], demand: &[u64]) -> Groups {
        let with_demand = (0..items.len()).filter(|&item| demand[item] > 0);
        let (fixed, turnable): (Vec<usize>, Vec<usize>) =
            with_demand.partition(|&item| items[item].orientations.len() == 1);
        let mut groups: Vec<(i128, Vec<usize>)> = [fixed, turnable]
            .into_iter()
            .filter(|members| !members.is_empty())
            .map(|members| (excess_area(items, demand, &members), members))
            .collect();
        while groups.len() < MAX_GROUPS {
            let worst = (0..groups.len()).max_by_key(|&group| (groups[group].0, groups.len() - group));
            let Some(worst) = worst.filter(|&worst| groups[worst].0 > 0) else { break };
            let (_, members) = groups.swap_remove(worst);
            for half in split(items, demand, members) {
                groups.push((excess_area(items, demand, &half), half));
            }
        }
        let mut members: Vec<Vec<usize>> = groups.into_iter().map(|(_, members)| members).collect();
        members.iter_mut().for_each(|members| members.sort_unstable());
        members.sort_unstable();
        Groups { members }
    }

    /// Number of pieces in each group.
    pub(in crate::cutting_stock) fn demand(&self, demand: &[u64]) -> Demand {
        self.members.iter().map(|members| members.iter().map(|&item| demand[item]).sum()).collect()
    }

    /// Each group as one item type. `combine` reduces its members' sizes to one: to the greatest for a plan, to the
    /// least for a bound.
    pub(in crate::cutting_stock) fn item_types(
        &self,
        items: &[ItemType],
        combine: impl Fn(i64, i64) -> i64,
    ) -> Vec<ItemType> {
        let pair = |(a, b): (Orientation, &Orientation)| Orientation {
            length: combine(a.length, b.length),
            width: combine(a.width, b.width),
            ..a
        };
        let group = |members: &Vec<usize>| {
            let orientations = members.iter().map(|&member| items[member].orientations.clone());
            let orientations =
                orientations.reduce(|combined, other| combined.into_iter().zip(&other).map(pair).collect());
            ItemType { orientations: orientations.unwrap_or_default() }
        };
        self.members.iter().map(group).collect()
    }
}

/// Total area by which a group's pieces grow if all become as large as the largest in each direction.
fn excess_area(items: &[ItemType], demand: &[u64], members: &[usize]) -> i128 {
    let (mut first, mut second) = (0, 0);
    for [a, b] in members.iter().map(|&member| sides(&items[member])) {
        (first, second) = (first.max(a), second.max(b));
    }
    let excess = members.iter().map(|&member| {
        let [a, b] = sides(&items[member]);
        (i128::from(first) * i128::from(second) - i128::from(a) * i128::from(b)) * i128::from(demand[member])
    });
    excess.sum()
}

/// The two sides of an item type, in an order that is the same for all of a group.
fn sides(item: &ItemType) -> [i64; 2] {
    match item.orientations.as_slice() {
        [first, second] => [first.width, second.width],
        orientations => orientations.first().map_or([0, 0], |of| [of.length, of.width]),
    }
}

/// A group split in two at the median of one side: the side that leaves less excess area.
fn split(items: &[ItemType], demand: &[u64], members: Vec<usize>) -> [Vec<usize>; 2] {
    let split_by = |side: usize| {
        let size = |member: usize| sides(&items[member])[side];
        let mut members = members.clone();
        members.sort_by_key(|&member| (size(member), member));
        let sizes: Vec<i64> = members.iter().map(|&member| size(member)).collect();
        let median = sizes[sizes.len() / 2];
        // Members of one size stay together.
        let below = match sizes.partition_point(|&size| size < median) {
            0 => sizes.partition_point(|&size| size <= median),
            below => below,
        };
        let above = members.split_off(below);
        let excess = excess_area(items, demand, &members) + excess_area(items, demand, &above);
        (excess, [members, above])
    };
    let [by_first, by_second] = [split_by(0), split_by(1)];
    if by_first.0 < by_second.0 { by_first.1 } else { by_second.1 }
}
