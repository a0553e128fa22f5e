//! The shortest plan for few pieces, by trying all guillotine cuts.
use super::kinds::{Counts, Kind, Way};
use super::layout::Layout;

/// A rectangle that some pieces can be cut from, one that no other for the same pieces is within.
#[derive(Clone, Copy, Debug)]
struct Block {
    length: i64,
    width: i64,
    made: Made,
}

/// How a block is cut: the parts by their set and their place in its list.
#[derive(Clone, Copy, Debug)]
enum Made {
    Piece(usize, Way),
    Beside([(usize, usize); 2]),
    Over([(usize, usize); 2]),
}

/// How many ways there are to split sets of these pieces in two: the work that trying all cuts takes.
pub(super) fn splits(counts: &Counts) -> u64 {
    counts.iter().fold(1_u64, |splits, &n| splits.saturating_mul((n + 1).saturating_mul(n + 2) / 2))
}

/// The sections of least total length, none longer than `longest`.
///
/// # Method
///
/// For every set of the pieces, from small to large, all rectangles they can be cut from that are not within each
/// other: those of two parts of the set, side by side or one above the other. Sections are then joined in the same
/// way. Every guillotine plan is among them, so the least is the optimum.
///
/// # Example
///
/// Three pieces of 10 × 18 from a sheet 36 wide: two side by side, then one, 20 long. No plan is shorter.
pub(super) fn exact(kinds: &[Kind], counts: &Counts, width: i64, longest: i64) -> Vec<Layout> {
    Sets::of(counts).solve(kinds, width, longest)
}

/// The sets of some pieces, numbered so that every part of a set has a lower number.
struct Sets {
    counts: Counts,
    /// What one piece of each kind adds to a set's number.
    weights: Vec<usize>,
    number: usize,
}

impl Sets {
    fn of(counts: &Counts) -> Sets {
        let mut number = 1;
        let mut weights = Vec::new();
        for &count in counts {
            weights.push(number);
            number *= count as usize + 1;
        }
        Sets { counts: counts.clone(), weights, number }
    }

    /// The parts of a set that hold at most half of it, without the empty one: of two halves the one with the lower
    /// number.
    fn parts(&self, set: usize) -> Vec<usize> {
        let mut parts = vec![0];
        for (&weight, &count) in self.weights.iter().zip(&self.counts) {
            let of_kind = set / weight % (count as usize + 1);
            let fewer = parts.len();
            for times in 1..=of_kind {
                for part in 0..fewer {
                    parts.push(parts[part] + times * weight);
                }
            }
        }
        parts.retain(|&part| part > 0 && part <= set - part);
        parts
    }

    fn solve(&self, kinds: &[Kind], width: i64, longest: i64) -> Vec<Layout> {
        let mut blocks: Vec<Vec<Block>> = vec![Vec::new(); self.number];
        // The least length of each set, and the part that is its last section.
        let mut least = vec![(0, 0); self.number];
        for set in 1..self.number {
            let mut of_set = Vec::new();
            let mut single =
                (0..kinds.len()).filter(|&kind| self.counts[kind] > 0 && self.weights[kind] == set);
            if let Some(kind) = single.next() {
                for &way in &kinds[kind].ways {
                    keep(
                        &mut of_set,
                        Block { length: way.length, width: way.width, made: Made::Piece(kind, way) },
                    );
                }
            }
            let mut shortest = (i64::MAX, 0);
            for part in self.parts(set) {
                let rest = set - part;
                for (a, first) in blocks[part].iter().enumerate() {
                    for (b, then) in blocks[rest].iter().enumerate() {
                        let made = [(part, a), (rest, b)];
                        let length = first.length + then.length;
                        if length <= longest {
                            let width = first.width.max(then.width);
                            keep(&mut of_set, Block { length, width, made: Made::Beside(made) });
                        }
                        let across = first.width + then.width;
                        if across <= width {
                            let length = first.length.max(then.length);
                            keep(&mut of_set, Block { length, width: across, made: Made::Over(made) });
                        }
                    }
                }
                shortest = shortest.min((least[part].0 + least[rest].0, part));
            }
            let section = of_set.iter().map(|block| block.length).min();
            least[set] = section.map_or(shortest, |section| shortest.min((section, set)));
            blocks[set] = of_set;
        }
        let mut sections = Vec::new();
        self.sections(&blocks, &least, self.number - 1, &mut sections);
        sections
    }

    fn sections(
        &self,
        blocks: &[Vec<Block>],
        least: &[(i64, usize)],
        set: usize,
        sections: &mut Vec<Layout>,
    ) {
        if set == 0 {
            return;
        }
        let part = least[set].1;
        if part < set {
            self.sections(blocks, least, part, sections);
            return self.sections(blocks, least, set - part, sections);
        }
        let best = (0..blocks[set].len()).min_by_key(|&at| (blocks[set][at].length, blocks[set][at].width));
        if let Some(at) = best {
            sections.extend(layout(blocks, (set, at)).sections());
        }
    }
}

/// Keeps a block unless another is within it, and drops those that it is within.
fn keep(blocks: &mut Vec<Block>, block: Block) {
    if blocks.iter().any(|other| other.length <= block.length && other.width <= block.width) {
        return;
    }
    blocks.retain(|other| other.length < block.length || other.width < block.width);
    blocks.push(block);
}

fn layout(blocks: &[Vec<Block>], (set, at): (usize, usize)) -> Layout {
    match blocks[set][at].made {
        Made::Piece(kind, way) => Layout::Piece { kind, way },
        Made::Beside([a, b]) => Layout::beside(layout(blocks, a), layout(blocks, b)),
        Made::Over([a, b]) => Layout::over(layout(blocks, a), layout(blocks, b)),
    }
}
