//! Optimal plan for few pieces, by dynamic programming over all subsets of the pieces.
use crate::cutting_stock::item_types::{Demand, ItemType, Orientation};
use crate::cutting_stock::pattern::Pattern;

/// A rectangle that a subset can be cut from. It contains no other such rectangle of the subset.
#[derive(Clone, Copy, Debug)]
struct Block {
    length: i64,
    width: i64,
    content: Content,
}

/// Content of a block: a single piece, or two blocks, each given by its subset and its index among that subset's blocks.
#[derive(Clone, Copy, Debug)]
enum Content {
    Item(usize, Orientation),
    AlongRoll([(usize, usize); 2]),
    AcrossRoll([(usize, usize); 2]),
}

/// Number of ways to take a subset and to split it in two: the work of an exhaustive search.
///
/// Of `n` equal pieces a subset has 0 to `n`, and each part of it 0 to that: `(n + 1)(n + 2)/2` ways.
pub(in crate::cutting_stock) fn split_count(demand: &[u64]) -> u64 {
    demand.iter().fold(1_u64, |splits, &n| splits.saturating_mul((n + 1).saturating_mul(n + 2) / 2))
}

/// Sections of least total length for all pieces, none longer than `max_length`.
///
/// # Method
///
/// For each subset of the pieces, small ones first, all minimal rectangles that the subset can be cut from: those of
/// two complementary parts, joined along or across the roll. Sections are joined in the same way. Every guillotine plan
/// is among these, so the result is optimal.
///
/// # Example
///
/// Three pieces of 10 × 18 from a roll 36 wide: two side by side, then one, 20 long. No plan is shorter.
pub(in crate::cutting_stock) fn optimal_sections(
    items: &[ItemType],
    demand: &[u64],
    width: i64,
    max_length: i64,
) -> Vec<Pattern> {
    Subsets::new(demand).solve(items, width, max_length)
}

/// The subsets of some pieces, numbered so that every part of a subset has a lower number.
struct Subsets {
    demand: Demand,
    /// Step in the number of a subset for each further piece of an item type.
    weights: Vec<usize>,
    count: usize,
}

impl Subsets {
    fn new(demand: &[u64]) -> Subsets {
        let mut count = 1;
        let mut weights = Vec::new();
        for &pieces in demand {
            weights.push(count);
            count *= pieces as usize + 1;
        }
        Subsets { demand: demand.to_vec(), weights, count }
    }

    /// One part of each split of a subset into two nonempty parts: the one with the lower number.
    fn parts(&self, subset: usize) -> Vec<usize> {
        let mut parts = vec![0];
        for (&weight, &demand) in self.weights.iter().zip(&self.demand) {
            let pieces = subset / weight % (demand as usize + 1);
            let without = parts.len();
            for taken in 1..=pieces {
                for part in 0..without {
                    parts.push(parts[part] + taken * weight);
                }
            }
        }
        parts.retain(|&part| part > 0 && part <= subset - part);
        parts
    }

    fn solve(&self, items: &[ItemType], width: i64, max_length: i64) -> Vec<Pattern> {
        let mut blocks: Vec<Vec<Block>> = vec![Vec::new(); self.count];
        // Least total length of each subset's sections, and the part that it splits off; the subset itself if it is one
        // section.
        let mut shortest = vec![(0, 0); self.count];
        for subset in 1..self.count {
            let mut minimal = Vec::new();
            let single = (0..items.len()).find(|&item| self.demand[item] > 0 && self.weights[item] == subset);
            if let Some(item) = single {
                for &orientation in &items[item].orientations {
                    let Orientation { length, width, .. } = orientation;
                    let content = Content::Item(item, orientation);
                    keep_minimal(&mut minimal, Block { length, width, content });
                }
            }
            let mut split = (i64::MAX, 0);
            for part in self.parts(subset) {
                let rest = subset - part;
                for (first_index, first) in blocks[part].iter().enumerate() {
                    for (second_index, second) in blocks[rest].iter().enumerate() {
                        let parts = [(part, first_index), (rest, second_index)];
                        let length = first.length + second.length;
                        if length <= max_length {
                            let width = first.width.max(second.width);
                            keep_minimal(
                                &mut minimal,
                                Block { length, width, content: Content::AlongRoll(parts) },
                            );
                        }
                        let both_widths = first.width + second.width;
                        if both_widths <= width {
                            let length = first.length.max(second.length);
                            let content = Content::AcrossRoll(parts);
                            keep_minimal(&mut minimal, Block { length, width: both_widths, content });
                        }
                    }
                }
                split = split.min((shortest[part].0 + shortest[rest].0, part));
            }
            let one_section = minimal.iter().map(|block| block.length).min();
            shortest[subset] = one_section.map_or(split, |length| split.min((length, subset)));
            blocks[subset] = minimal;
        }
        let mut sections = Vec::new();
        self.collect_sections(&blocks, &shortest, self.count - 1, &mut sections);
        sections
    }

    fn collect_sections(
        &self,
        blocks: &[Vec<Block>],
        shortest: &[(i64, usize)],
        subset: usize,
        sections: &mut Vec<Pattern>,
    ) {
        if subset == 0 {
            return;
        }
        let part = shortest[subset].1;
        if part < subset {
            self.collect_sections(blocks, shortest, part, sections);
            return self.collect_sections(blocks, shortest, subset - part, sections);
        }
        let size = |&index: &usize| (blocks[subset][index].length, blocks[subset][index].width);
        if let Some(index) = (0..blocks[subset].len()).min_by_key(size) {
            sections.extend(pattern(blocks, (subset, index)).into_sections());
        }
    }
}

/// Adds a block unless it contains another one, and removes those that contain it.
fn keep_minimal(blocks: &mut Vec<Block>, block: Block) {
    if blocks.iter().any(|other| other.length <= block.length && other.width <= block.width) {
        return;
    }
    blocks.retain(|other| other.length < block.length || other.width < block.width);
    blocks.push(block);
}

fn pattern(blocks: &[Vec<Block>], (subset, index): (usize, usize)) -> Pattern {
    match blocks[subset][index].content {
        Content::Item(item, orientation) => Pattern::Item { item, orientation },
        Content::AlongRoll([a, b]) => Pattern::along_roll(pattern(blocks, a), pattern(blocks, b)),
        Content::AcrossRoll([a, b]) => Pattern::across_roll(pattern(blocks, a), pattern(blocks, b)),
    }
}
