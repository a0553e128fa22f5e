//! How near lags are to the edge and the end of their wood, and to each other.
use super::wood::Member;
use crate::geometry::{grid, half, to_mm};
use crate::model::Lags;
use crate::units::{Length, RealLength};

/// From a post's point to the edge and to the end of its wood, in grid steps; below 0 where it stands beyond.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room {
    /// Across the grain.
    pub(super) to_edge: i64,
    /// Along the grain.
    pub(super) to_end: i64,
}

/// A distance there is, and the one that is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distance {
    /// What there is; below 0 where a lag misses the wood.
    pub has: RealLength,
    /// What is asked.
    pub asked: RealLength,
}

impl Distance {
    /// Whether there is less than is asked.
    pub fn is_short(&self) -> bool {
        self.has < self.asked
    }
}

/// The distances of a post's lags.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distances {
    /// From the outermost lag to the edge of the wood; `None` where the spacing of the lags is not given.
    pub edge: Option<Distance>,
    /// From the outermost lag to the end of the wood, along the grain; `None` where the spacing is not given.
    pub end: Option<Distance>,
    /// From lag to lag; `None` for a single lag, or where the spacing is not given.
    pub spacing: Option<Distance>,
}

/// The distances of lags about a post's point.
///
/// # Rule
///
/// Asked are 1.5 diameters to the edge (and not less than the assembly's own distance), 4 diameters to the end and from
/// lag to lag. Lags lie about the post's point, `across` the rafter from outermost to outermost, and along it as if all
/// were in one line. A board lies the other way: what is along the rafter is across the board. The post is taken to
/// stand over the middle of its board.
///
/// # Source
///
/// NDS 2018, table 12.5.1E, for lag screws loaded in withdrawal only: from memory; 1.5 diameters to the edge also from
/// a second hand.
///
/// # Example
///
/// One 5/16 in lag, 1/4 in off the middle of a rafter 1 1/2 in wide: `3/4 − 1/4 = 1/2 in` to the edge, where
/// `1.5 · 5/16 = 15/32 in` are asked.
pub(super) fn distances(lags: &Lags, least_edge: Length, member: Member, room: Room) -> Distances {
    let (across, reach) = (half(lags.across), lags.reach().map(half));
    let (past_edge, past_end) = match member {
        Member::Rafter => (Some(across), reach),
        Member::Blocking => (reach, Some(across)),
    };
    let diameters = |halves: i64| half(lags.diameter) * halves;
    let length = |steps: i64| RealLength::from_mm(to_mm(steps));
    let distance =
        |room: i64, past: i64, asked: i64| Distance { has: length(room - past), asked: length(asked) };
    let spacing = lags.spacing.filter(|_| lags.count > 1);
    Distances {
        edge: past_edge.map(|past| distance(room.to_edge, past, diameters(3).max(grid(least_edge)))),
        end: past_end.map(|past| distance(room.to_end, past, diameters(8))),
        spacing: spacing.map(|spacing| distance(grid(spacing), 0, diameters(8))),
    }
}
