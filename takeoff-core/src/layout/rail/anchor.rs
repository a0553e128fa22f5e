//! Anchors: the rafters, bays and fixed posts that a rail can use.
use crate::geometry::{SlopePoint, grid, half};
use crate::model::Rafters;
use crate::units::Length;

/// The wood under a post of a rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Anchor {
    /// A rafter, counted from 0 on the left.
    Rafter(usize),
    /// A blocking board in the bay on the right of a rafter.
    Bay(usize),
    /// A fixed post: its index in the slope's list, and its place.
    Fixed(usize, SlopePoint),
}

impl Anchor {
    /// Its `u` at a height, in grid steps.
    pub(crate) fn u_at(&self, rafters: &Rafters, v: i64) -> i64 {
        let v = Length::from_nm(v / 2);
        match *self {
            Anchor::Rafter(rafter) => grid(rafters.centre(rafter, v)),
            Anchor::Bay(left) => grid(middle(rafters.centre(left, v), rafters.centre(left + 1, v))),
            Anchor::Fixed(_, at) => grid(at.u),
        }
    }

    /// Whether its `u` varies with the height.
    pub(crate) fn is_crooked(&self, rafters: &Rafters) -> bool {
        let crooked = |rafter: usize| rafters.lines[rafter].lower != rafters.lines[rafter].upper;
        match *self {
            Anchor::Rafter(rafter) => crooked(rafter),
            Anchor::Bay(left) => crooked(left) || crooked(left + 1),
            Anchor::Fixed(..) => false,
        }
    }

    /// The number of its rafter for the stagger; `None` for a fixed post, which has no phase.
    pub(crate) fn rafter(&self) -> Option<usize> {
        match *self {
            Anchor::Rafter(rafter) | Anchor::Bay(rafter) => Some(rafter),
            Anchor::Fixed(..) => None,
        }
    }

    /// Whether it is a fixed post.
    pub(crate) fn is_fixed(&self) -> bool {
        matches!(self, Anchor::Fixed(..))
    }

    /// All rafters, and with blocking the bays whose middle is beyond the reach of a lag in either rafter.
    pub(crate) fn all(rafters: &Rafters, blocking: bool, lag_edge_distance: Length) -> Vec<Anchor> {
        let mut anchors: Vec<Anchor> = (0..rafters.lines.len()).map(Anchor::Rafter).collect();
        if blocking {
            let reach = half(rafters.width) - grid(lag_edge_distance);
            let far_enough = |v: Length, left: usize| {
                let (own, other) = (rafters.centre(left, v), rafters.centre(left + 1, v));
                grid(middle(own, other) - own).min(grid(other - middle(own, other)))
                    > reach.max(half(rafters.width))
            };
            let bays = (0..rafters.lines.len().saturating_sub(1))
                .filter(|&left| far_enough(rafters.low, left) && far_enough(rafters.high, left));
            anchors.extend(bays.map(Anchor::Bay));
        }
        anchors
    }
}

/// The middle of two places, to the nanometre, half away from zero.
fn middle(a: Length, b: Length) -> Length {
    let sum = a.nm() + b.nm();
    Length::from_nm((sum.abs() + 1) / 2 * sum.signum())
}
