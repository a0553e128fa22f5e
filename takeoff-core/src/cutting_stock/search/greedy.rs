//! Greedy sections: the first piece of a priority list that fits, again and again.
use std::cmp::Reverse;

use crate::cutting_stock::item_types::{Demand, ItemType, Orientation, all_orientations};
use crate::cutting_stock::pattern::Pattern;

/// First cut of the rest of a rectangle, with a piece in its corner.
#[derive(Clone, Copy, Debug)]
pub(super) enum FirstCut {
    /// Along the roll: a strip as wide as the piece, and the strip beside it over the whole length.
    Along,
    /// Across the roll: a strip as long as the piece, and the strip beyond it over the whole width.
    Across,
}

/// All orientations of all item types, in the order in which they are tried.
pub(super) struct Priority(Vec<(usize, Orientation)>);

impl Priority {
    /// Highest key first; of equals the earlier item type.
    pub(super) fn by<K: Ord>(items: &[ItemType], key: impl Fn(&Orientation) -> K) -> Priority {
        let mut orientations: Vec<(usize, Orientation)> = all_orientations(items).collect();
        orientations.sort_by_key(|(_, orientation)| Reverse(key(orientation)));
        Priority(orientations)
    }

    /// Sections for the whole demand. The first piece sets the length of a section; then the section is filled.
    pub(super) fn sections(&self, width: i64, first_cut: FirstCut, demand: &[u64]) -> Vec<Pattern> {
        let mut remaining = demand.to_vec();
        let mut fill = GreedyFill::new(self);
        let mut sections = Vec::new();
        let mut first = 0;
        while let Some((item, orientation)) = self.0.get(first) {
            if remaining[*item] == 0 {
                first += 1;
                continue;
            }
            sections.extend(fill.rectangle(first, [orientation.length, width], first_cut, &mut remaining));
        }
        sections
    }
}

/// Greedy filling of rectangles, one after another, from a demand that only shrinks.
pub(super) struct GreedyFill<'p> {
    priority: &'p Priority,
    candidates: FirstFitTree,
}

impl<'p> GreedyFill<'p> {
    /// No piece is used up yet.
    pub(super) fn new(priority: &'p Priority) -> GreedyFill<'p> {
        let sizes = priority.0.iter().map(|(_, orientation)| [orientation.length, orientation.width]);
        GreedyFill { priority, candidates: FirstFitTree::new(sizes) }
    }

    /// The section, with pieces in the strip beside it as far as they fit.
    pub(super) fn top_up(&mut self, section: Pattern, width: i64, remaining: &mut Demand) -> Pattern {
        let (length, used_width) = section.size();
        let beside = self.rectangle(0, [length, width - used_width], FirstCut::Along, remaining);
        join(section, beside, Pattern::across_roll)
    }

    /// Fills a rectangle with orientations of the list from index `first` on.
    fn rectangle(
        &mut self,
        first: usize,
        [length, width]: [i64; 2],
        first_cut: FirstCut,
        remaining: &mut Demand,
    ) -> Option<Pattern> {
        let first = self.first_fit(first, [length, width], remaining)?;
        let (item, orientation) = self.priority.0[first];
        remaining[item] -= 1;
        let piece = Pattern::Item { item, orientation };
        let (spare_length, spare_width) = (length - orientation.length, width - orientation.width);
        Some(match first_cut {
            FirstCut::Along => {
                let beside = self.rectangle(first, [length, spare_width], first_cut, remaining);
                let beyond = self.rectangle(first, [spare_length, orientation.width], first_cut, remaining);
                join(join(piece, beyond, Pattern::along_roll), beside, Pattern::across_roll)
            }
            FirstCut::Across => {
                let beside = self.rectangle(first, [orientation.length, spare_width], first_cut, remaining);
                let beyond = self.rectangle(first, [spare_length, width], first_cut, remaining);
                join(join(piece, beside, Pattern::across_roll), beyond, Pattern::along_roll)
            }
        })
    }

    /// Index of the first orientation, from `first` on, that fits and has demand left.
    fn first_fit(&mut self, first: usize, room: [i64; 2], remaining: &Demand) -> Option<usize> {
        loop {
            let index = self.candidates.first_fit(first, room)?;
            if remaining[self.priority.0[index].0] > 0 {
                return Some(index);
            }
            // Demand only shrinks, so an item type that is used up stays so.
            self.candidates.remove(index);
        }
    }
}

/// A segment tree over sizes in a fixed order. It finds the first size within a room without a walk along the list,
/// which would make greedy filling quadratic in the number of sizes.
struct FirstFitTree {
    /// Number of leaves, a power of two.
    leaves: usize,
    /// Least length and least width in the subtree of each node. Node 1 is the root; nodes `2n` and `2n + 1` are the
    /// children of `n`; leaf `i` is node `leaves + i`.
    least: Vec<[i64; 2]>,
}

impl FirstFitTree {
    /// Larger than every room: a leaf without a size.
    const NONE: [i64; 2] = [i64::MAX; 2];

    fn new(sizes: impl ExactSizeIterator<Item = [i64; 2]>) -> FirstFitTree {
        let leaves = sizes.len().next_power_of_two();
        let mut least = vec![Self::NONE; leaves];
        least.extend(sizes);
        least.resize(2 * leaves, Self::NONE);
        let mut tree = FirstFitTree { leaves, least };
        (1..leaves).rev().for_each(|node| tree.update(node));
        tree
    }

    fn update(&mut self, node: usize) {
        let (left, right) = (self.least[2 * node], self.least[2 * node + 1]);
        self.least[node] = [left[0].min(right[0]), left[1].min(right[1])];
    }

    fn remove(&mut self, index: usize) {
        let mut node = self.leaves + index;
        self.least[node] = Self::NONE;
        while node > 1 {
            node /= 2;
            self.update(node);
        }
    }

    /// Index of the first size, from `first` on, that is within the room.
    fn first_fit(&self, first: usize, room: [i64; 2]) -> Option<usize> {
        self.first_fit_below(1, self.leaves, first, room)
    }

    /// The same within the subtree of `node`, which has this number of leaves; `first` counts from its first leaf.
    fn first_fit_below(&self, node: usize, leaves: usize, first: usize, room: [i64; 2]) -> Option<usize> {
        let [least_length, least_width] = self.least[node];
        // The two minima may belong to different leaves, so a node that passes may hold no size that fits.
        if first >= leaves || least_length > room[0] || least_width > room[1] {
            return None;
        }
        if leaves == 1 {
            return Some(node - self.leaves);
        }
        let half = leaves / 2;
        self.first_fit_below(2 * node, half, first, room)
            .or_else(|| self.first_fit_below(2 * node + 1, half, first.saturating_sub(half), room))
    }
}

fn join(pattern: Pattern, other: Option<Pattern>, join: impl Fn(Pattern, Pattern) -> Pattern) -> Pattern {
    match other {
        Some(other) => join(pattern, other),
        None => pattern,
    }
}
