//! Words for each kind, in one place, so that screen, tables and drawings agree.
use super::plain::number;
use crate::cuts::{CutKind, TileSide};
use crate::deck::{DeckMethod, TileClass};
use crate::model::{EdgeKind, ThreadLimit};
use crate::relocation::Situation;
use crate::screening::{Member, PressureFrom};
use crate::units::Unit;

/// Situation of a post.
pub(super) fn situation(situation: Situation) -> &'static str {
    match situation {
        Situation::None => "no tile there",
        Situation::OneTileHole => "one tile, hole",
        Situation::OneTileEdge => "one tile, edge",
        Situation::TwoSideBySide => "two tiles side by side",
        Situation::TwoCourses => "two tiles, one above the other",
        Situation::Three => "three tiles",
        Situation::FourOrMore => "four or more tiles",
    }
}

/// Work of a post by its situation.
pub(super) fn met(situation: Situation) -> &'static str {
    match situation {
        Situation::None => "no tile to cut",
        Situation::OneTileHole => "one hole",
        Situation::OneTileEdge => "a notch at the edge of one tile",
        Situation::TwoSideBySide => "a notch across two tiles side by side",
        Situation::TwoCourses => "a notch across two courses",
        Situation::Three => "cuts in three tiles",
        Situation::FourOrMore => "cuts in four or more tiles",
    }
}

/// Every situation, from the easiest to the hardest.
pub(super) const SITUATIONS: [Situation; 7] = [
    Situation::None,
    Situation::OneTileHole,
    Situation::OneTileEdge,
    Situation::TwoSideBySide,
    Situation::TwoCourses,
    Situation::Three,
    Situation::FourOrMore,
];

/// Kind of a cut.
pub(super) fn cut_kind(kind: CutKind) -> &'static str {
    match kind {
        CutKind::Hole => "hole",
        CutKind::Notch => "notch",
        CutKind::Corner => "corner notch",
        CutKind::Severed => "replace",
    }
}

/// Class of a handled tile.
pub(super) fn tile_class(class: TileClass) -> &'static str {
    match class {
        TileClass::Severed => "replaced",
        TileClass::Cut => "cut",
        TileClass::Removed => "removed",
        TileClass::Loosened => "raised",
    }
}

/// Deck method.
pub(super) fn deck_method(method: DeckMethod) -> &'static str {
    match method {
        DeckMethod::Tucked => "tucked",
        DeckMethod::Patched => "patched",
        DeckMethod::ThreeCourse => "three-course",
    }
}

/// A side of a tile as laid.
pub(super) fn tile_side(side: TileSide) -> &'static str {
    match side {
        TileSide::Left => "left",
        TileSide::Nose => "nose",
        TileSide::Right => "right",
        TileSide::Head => "head",
        TileSide::FieldEdge => "roof edge",
    }
}

/// An edge of a slope.
pub(super) fn edge(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::Eave => "eave",
        EdgeKind::Ridge => "ridge",
        EdgeKind::Rake => "rake",
        EdgeKind::Hip => "hip",
        EdgeKind::Valley => "valley",
        EdgeKind::Wall => "wall",
    }
}

/// The unit of a number in a table.
pub(super) fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Each => "each",
        Unit::Mm2 => "mm2",
        Unit::Mm => "mm",
        Unit::Mm3 => "mm3",
    }
}

/// Member that holds the lags.
pub(super) fn member(member: Member) -> &'static str {
    match member {
        Member::Rafter => "rafter",
        Member::Blocking => "blocking",
    }
}

/// Limit of the thread in the wood.
pub(super) fn thread_limit(limit: ThreadLimit) -> &'static str {
    match limit {
        ThreadLimit::ThreadLength => "thread of the lag",
        ThreadLimit::LagLength => "length of the lag",
        ThreadLimit::WoodDepth => "depth of the wood",
    }
}

/// Source of an uplift pressure.
pub(super) fn pressure_from(from: PressureFrom) -> &'static str {
    match from {
        PressureFrom::Given => "as given",
        PressureFrom::Equation => "by the equation",
        PressureFrom::Least => "at the least",
    }
}

/// A count with its noun: `1 patch`, `2 patches`.
pub(super) fn count(n: u64, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}

/// `95 %`, with as many decimals as are needed.
pub(super) fn percent(share: f64) -> String {
    format!("{} %", number((share * 1e6).round() / 1e4))
}

/// A probability to a tenth of a percent.
pub(super) fn chance(probability: f64) -> String {
    match probability {
        p if p <= 0.0 => "0 %".to_owned(),
        p if p < 0.001 => "under 0.1 %".to_owned(),
        p => format!("{:.1} %", p * 100.0),
    }
}

/// Ascending whole numbers, runs of neighbours together: `4 to 7, 9`.
pub(super) fn runs(numbers: &[i64]) -> String {
    let runs = numbers.chunk_by(|a, b| a + 1 == *b).map(|run| match *run {
        [first, second] => format!("{first}, {second}"),
        [first, .., last] => format!("{first} to {last}"),
        [only] => only.to_string(),
        [] => String::new(),
    });
    runs.collect::<Vec<_>>().join(", ")
}
