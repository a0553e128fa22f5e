//! Sections filled piece by piece, in a given order.
use std::cmp::Reverse;

use super::kinds::{Counts, Kind, Way};
use super::layout::Layout;

/// How what is left beside a piece is cut.
#[derive(Clone, Copy, Debug)]
pub(super) enum Split {
    /// Ripped along the roll first: a lane for the piece, the rest of the length in it for others.
    Along,
    /// Cut across first: what is above the piece is only as long as it.
    Across,
}

/// Ways to cut pieces in the order in which they are tried.
pub(super) struct Order(Vec<(usize, Way)>);

impl Order {
    /// By what a way is worth, most first; of equals the earlier kind.
    pub(super) fn by<K: Ord>(kinds: &[Kind], worth: impl Fn(&Way) -> K) -> Order {
        let ways = kinds.iter().enumerate();
        let mut ways: Vec<(usize, Way)> =
            ways.flat_map(|(kind, of)| of.ways.iter().map(move |&way| (kind, way))).collect();
        ways.sort_by_key(|(_, way)| Reverse(worth(way)));
        Order(ways)
    }

    /// Sections for all pieces wanted: each as long as the first piece in it, then filled with what fits.
    pub(super) fn sections(&self, width: i64, split: Split, wanted: &mut Counts) -> Vec<Layout> {
        let mut sections = Vec::new();
        let mut first = 0;
        while let Some((kind, way)) = self.0.get(first) {
            if wanted[*kind] == 0 {
                first += 1;
                continue;
            }
            sections.extend(self.fill(first, [way.length, width], split, wanted));
        }
        sections
    }

    /// A section with what still fits above its pieces.
    pub(super) fn topped_up(&self, section: Layout, width: i64, wanted: &mut Counts) -> Layout {
        let (length, across) = section.size();
        let above = self.fill(0, [length, width - across], Split::Along, wanted);
        join(section, above, Layout::over)
    }

    /// Fills a rectangle with ways from the `first` on.
    pub(super) fn fill(
        &self,
        first: usize,
        [length, width]: [i64; 2],
        split: Split,
        wanted: &mut Counts,
    ) -> Option<Layout> {
        let fits =
            |(kind, way): &(usize, Way)| wanted[*kind] > 0 && way.length <= length && way.width <= width;
        let first = first + self.0[first..].iter().position(fits)?;
        let (kind, way) = self.0[first];
        wanted[kind] -= 1;
        let piece = Layout::Piece { kind, way };
        let (longer, higher) = (length - way.length, width - way.width);
        Some(match split {
            Split::Along => {
                let above = self.fill(first, [length, higher], split, wanted);
                let beside = self.fill(first, [longer, way.width], split, wanted);
                join(join(piece, beside, Layout::beside), above, Layout::over)
            }
            Split::Across => {
                let above = self.fill(first, [way.length, higher], split, wanted);
                let beside = self.fill(first, [longer, width], split, wanted);
                join(join(piece, above, Layout::over), beside, Layout::beside)
            }
        })
    }
}

fn join(layout: Layout, more: Option<Layout>, join: impl Fn(Layout, Layout) -> Layout) -> Layout {
    match more {
        Some(more) => join(layout, more),
        None => layout,
    }
}
