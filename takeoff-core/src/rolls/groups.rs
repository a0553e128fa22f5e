//! Kinds of nearly the same size together, where there are too many to plan one by one.
use super::kinds::{Counts, Kind, Way};

/// More kinds than this are planned in groups.
const MOST_GROUPS: usize = 96;

/// Groups of kinds.
pub(super) struct Groups {
    /// The kinds of each.
    pub(super) members: Vec<Vec<usize>>,
}

impl Groups {
    /// Groups of kinds that can be cut in the same ways. A group that gives away the most by taking its pieces for as
    /// large as the largest of them is split in two, until there are enough groups.
    pub(super) fn of(kinds: &[Kind], counts: &Counts) -> Groups {
        let (mut one_way, mut two_ways) = (Vec::new(), Vec::new());
        for (at, kind) in kinds.iter().enumerate().filter(|&(at, _)| counts[at] > 0) {
            if kind.ways.len() == 1 { one_way.push(at) } else { two_ways.push(at) }
        }
        let mut cells: Vec<(i128, Vec<usize>)> = [one_way, two_ways]
            .into_iter()
            .filter(|members| !members.is_empty())
            .map(|members| (given_away(kinds, counts, &members), members))
            .collect();
        while cells.len() < MOST_GROUPS {
            let worst = (0..cells.len()).max_by_key(|&cell| (cells[cell].0, cells.len() - cell));
            let Some(worst) = worst.filter(|&worst| cells[worst].0 > 0) else { break };
            let (_, members) = cells.swap_remove(worst);
            for half in halves(kinds, counts, members) {
                cells.push((given_away(kinds, counts, &half), half));
            }
        }
        let mut members: Vec<Vec<usize>> = cells.into_iter().map(|(_, members)| members).collect();
        members.iter_mut().for_each(|members| members.sort_unstable());
        members.sort_unstable();
        Groups { members }
    }

    /// How many pieces each group has.
    pub(super) fn counts(&self, counts: &Counts) -> Counts {
        self.members.iter().map(|members| members.iter().map(|&kind| counts[kind]).sum()).collect()
    }

    /// Each group as one kind, of the size that `pick` takes of its members' sides.
    pub(super) fn kinds(&self, kinds: &[Kind], pick: impl Fn(i64, i64) -> i64) -> Vec<Kind> {
        let kind = |members: &Vec<usize>| {
            let ways = members.iter().map(|&member| kinds[member].ways.clone());
            let ways = ways.reduce(|all, ways| {
                let both = all.into_iter().zip(ways);
                let picked = both.map(|(a, b)| Way {
                    length: pick(a.length, b.length),
                    width: pick(a.width, b.width),
                    ..a
                });
                picked.collect()
            });
            Kind { ways: ways.unwrap_or_default() }
        };
        self.members.iter().map(kind).collect()
    }
}

/// How much area its pieces lack of being as large as the largest of a group.
fn given_away(kinds: &[Kind], counts: &Counts, members: &[usize]) -> i128 {
    let (mut first, mut second) = (0, 0);
    for [a, b] in members.iter().map(|&member| sides(&kinds[member])) {
        (first, second) = (first.max(a), second.max(b));
    }
    let lack = members.iter().map(|&member| {
        let [a, b] = sides(&kinds[member]);
        (i128::from(first) * i128::from(second) - i128::from(a) * i128::from(b)) * i128::from(counts[member])
    });
    lack.sum()
}

/// The two sides by which kinds are told apart.
fn sides(kind: &Kind) -> [i64; 2] {
    match kind.ways.as_slice() {
        [straight, turned] => [straight.width, turned.width],
        ways => ways.first().map_or([0, 0], |way| [way.length, way.width]),
    }
}

/// The members in two halves, by the side in which a cut in the middle of the pieces saves more.
fn halves(kinds: &[Kind], counts: &Counts, members: Vec<usize>) -> [Vec<usize>; 2] {
    let split = |side: usize| {
        let mut members = members.clone();
        members.sort_by_key(|&member| (sides(&kinds[member])[side], member));
        let of: Vec<i64> = members.iter().map(|&member| sides(&kinds[member])[side]).collect();
        let middle = of[of.len() / 2];
        let at = match of.partition_point(|&side| side < middle) {
            0 => of.partition_point(|&side| side <= middle),
            at => at,
        };
        let more = members.split_off(at);
        let left = given_away(kinds, counts, &members) + given_away(kinds, counts, &more);
        (left, [members, more])
    };
    let [first, second] = [split(0), split(1)];
    if first.0 < second.0 { first.1 } else { second.1 }
}
