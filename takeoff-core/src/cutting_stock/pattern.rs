//! Guillotine patterns: how a rectangle is cut into pieces, as a tree of edge-to-edge cuts.
use super::item_types::{Demand, Orientation};

/// A guillotine pattern. Each boundary between two parts is a cut from edge to edge of the rectangle that is cut there.
///
/// Parts are aligned at the start and at the edge of the roll; the rest of the rectangle is offcut.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Pattern {
    /// A single piece.
    Item {
        /// Its item type.
        item: usize,
        /// Its orientation.
        orientation: Orientation,
    },
    /// Parts that follow one another along the roll.
    AlongRoll(Vec<Pattern>),
    /// Parts that lie side by side across the roll.
    AcrossRoll(Vec<Pattern>),
}

impl Pattern {
    /// Length along the roll and width across it.
    pub(super) fn size(&self) -> (i64, i64) {
        match self {
            Pattern::Item { orientation, .. } => (orientation.length, orientation.width),
            Pattern::AlongRoll(parts) => parts
                .iter()
                .map(Pattern::size)
                .fold((0, 0), |(length, width), part| (length + part.0, width.max(part.1))),
            Pattern::AcrossRoll(parts) => parts
                .iter()
                .map(Pattern::size)
                .fold((0, 0), |(length, width), part| (length.max(part.0), width + part.1)),
        }
    }

    /// Calls `visit` with each piece of the pattern.
    pub(super) fn for_each_item(&self, visit: &mut impl FnMut(usize, Orientation)) {
        match self {
            Pattern::Item { item, orientation } => visit(*item, *orientation),
            Pattern::AlongRoll(parts) | Pattern::AcrossRoll(parts) => {
                parts.iter().for_each(|part| part.for_each_item(visit));
            }
        }
    }

    /// Total area of the pieces.
    pub(super) fn item_area(&self) -> i128 {
        let mut area = 0;
        self.for_each_item(&mut |_, orientation| area += orientation.area());
        area
    }

    /// Adds the number of pieces of each item type to `counts`.
    pub(super) fn count_items(&self, counts: &mut Demand) {
        self.for_each_item(&mut |item, _| counts[item] += 1);
    }

    /// `first`, then `second` along the roll.
    pub(super) fn along_roll(first: Pattern, second: Pattern) -> Pattern {
        let parts = |pattern| if let Pattern::AlongRoll(parts) = pattern { parts } else { vec![pattern] };
        Pattern::AlongRoll(parts(first).into_iter().chain(parts(second)).collect())
    }

    /// `first` at the edge of the roll, `second` beside it.
    pub(super) fn across_roll(first: Pattern, second: Pattern) -> Pattern {
        let parts = |pattern| if let Pattern::AcrossRoll(parts) = pattern { parts } else { vec![pattern] };
        Pattern::AcrossRoll(parts(first).into_iter().chain(parts(second)).collect())
    }

    /// The pattern without the pieces that exceed the demand; the pieces it keeps are subtracted from `demand`.
    pub(super) fn take_from(&self, demand: &mut Demand) -> Option<Pattern> {
        self.map_items(&mut |item, orientation| {
            demand[item] = demand[item].checked_sub(1)?;
            Some((item, orientation))
        })
    }

    /// The pattern with each piece replaced by another, or dropped.
    pub(super) fn map_items(
        &self,
        replace: &mut impl FnMut(usize, Orientation) -> Option<(usize, Orientation)>,
    ) -> Option<Pattern> {
        match self {
            Pattern::Item { item, orientation } => {
                replace(*item, *orientation).map(|(item, orientation)| Pattern::Item { item, orientation })
            }
            Pattern::AlongRoll(parts) => {
                parts.iter().filter_map(|part| part.map_items(replace)).reduce(Pattern::along_roll)
            }
            Pattern::AcrossRoll(parts) => {
                parts.iter().filter_map(|part| part.map_items(replace)).reduce(Pattern::across_roll)
            }
        }
    }

    /// The sections that the pattern falls into when every possible cut is made across the whole roll.
    pub(super) fn into_sections(self) -> Vec<Pattern> {
        if let Pattern::AlongRoll(parts) = self { parts } else { vec![self] }
    }
}

/// Total length of some sections.
pub(super) fn total_length(sections: &[Pattern]) -> i64 {
    sections.iter().map(|section| section.size().0).sum()
}
