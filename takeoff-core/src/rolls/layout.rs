//! How pieces lie in a section: a tree of guillotine cuts.
use super::kinds::{Counts, Way};

/// A part of a section. Each join of two parts is a cut from edge to edge of what is cut there.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Layout {
    /// One piece.
    Piece {
        /// Of this kind.
        kind: usize,
        /// Cut in this way.
        way: Way,
    },
    /// One after the other along the roll.
    Beside(Vec<Layout>),
    /// One above the other across the roll.
    Over(Vec<Layout>),
}

impl Layout {
    /// Length along the roll and width across it.
    pub(super) fn size(&self) -> (i64, i64) {
        let sizes = |parts: &[Layout]| parts.iter().map(Layout::size).collect::<Vec<_>>();
        match self {
            Layout::Piece { way, .. } => (way.length, way.width),
            Layout::Beside(parts) => sizes(parts)
                .into_iter()
                .fold((0, 0), |(length, width), (part, across)| (length + part, width.max(across))),
            Layout::Over(parts) => sizes(parts)
                .into_iter()
                .fold((0, 0), |(length, width), (part, across)| (length.max(part), width + across)),
        }
    }

    /// Area of its pieces.
    pub(super) fn area(&self) -> i128 {
        match self {
            Layout::Piece { way, .. } => i128::from(way.length) * i128::from(way.width),
            Layout::Beside(parts) | Layout::Over(parts) => parts.iter().map(Layout::area).sum(),
        }
    }

    /// Two parts one after the other.
    pub(super) fn beside(first: Layout, then: Layout) -> Layout {
        let parts = |layout| if let Layout::Beside(parts) = layout { parts } else { vec![layout] };
        Layout::Beside(parts(first).into_iter().chain(parts(then)).collect())
    }

    /// Two parts one above the other.
    pub(super) fn over(lower: Layout, upper: Layout) -> Layout {
        let parts = |layout| if let Layout::Over(parts) = layout { parts } else { vec![layout] };
        Layout::Over(parts(lower).into_iter().chain(parts(upper)).collect())
    }

    /// Adds its pieces to the counts.
    pub(super) fn count(&self, counts: &mut Counts) {
        match self {
            Layout::Piece { kind, .. } => counts[*kind] += 1,
            Layout::Beside(parts) | Layout::Over(parts) => parts.iter().for_each(|part| part.count(counts)),
        }
    }

    /// This layout without the pieces that are no longer wanted; those it keeps are taken off `wanted`.
    pub(super) fn take(&self, wanted: &mut Counts) -> Option<Layout> {
        self.replaced(&mut |kind, way| {
            wanted[kind] = wanted[kind].checked_sub(1)?;
            Some((kind, *way))
        })
    }

    /// This layout with another piece in the place of each, or none.
    pub(super) fn replaced(
        &self,
        by: &mut impl FnMut(usize, &Way) -> Option<(usize, Way)>,
    ) -> Option<Layout> {
        match self {
            Layout::Piece { kind, way } => by(*kind, way).map(|(kind, way)| Layout::Piece { kind, way }),
            Layout::Beside(parts) => parts.iter().filter_map(|part| part.replaced(by)).reduce(Layout::beside),
            Layout::Over(parts) => parts.iter().filter_map(|part| part.replaced(by)).reduce(Layout::over),
        }
    }

    /// Cut across the whole sheet wherever that is possible: the sections it falls into.
    pub(super) fn sections(self) -> Vec<Layout> {
        if let Layout::Beside(parts) = self { parts } else { vec![self] }
    }
}

/// Length of all sections together.
pub(super) fn total_length(sections: &[Layout]) -> i64 {
    sections.iter().map(|section| section.size().0).sum()
}
