//! Which edges of a tile an opening breaches, and what kind of cut that makes.
use super::{CutKind, Shape, TileSide};
use crate::geometry::{Polygon, Rect, Segment};

/// The breached edges that decide a cut: none, one, or the two beside a convex corner; else it severs.
///
/// An edge is breached when the opening grown by the least sound web meets it: the strip left would snap. Edges are
/// counted in the order of the footprint's boundary; a whole tile's from its nose, counter-clockwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Breach {
    /// Sound tile all round.
    None,
    /// Out through one edge.
    One(u16),
    /// Out through two edges that share a convex corner, in the order of the boundary.
    Corner(u16, u16),
    /// Any other set of edges: no sound single piece remains.
    Other,
}

impl Breach {
    /// The kind of cut.
    pub fn kind(&self) -> CutKind {
        match self {
            Breach::None => CutKind::Hole,
            Breach::One(_) => CutKind::Notch,
            Breach::Corner(..) => CutKind::Corner,
            Breach::Other => CutKind::Severed,
        }
    }

    /// The edges the cut runs out of.
    pub fn open_edges(&self) -> impl Iterator<Item = u16> + use<> {
        let (first, second) = match *self {
            Breach::One(edge) => (Some(edge), None),
            Breach::Corner(before, after) => (Some(before), Some(after)),
            Breach::None | Breach::Other => (None, None),
        };
        first.into_iter().chain(second)
    }

    /// What `grown` breaches of a whole tile.
    pub(super) fn of_whole(grown: &Shape, tile: &Rect) -> Breach {
        let Rect { left, lower, right, upper } = *tile;
        // Each side is a rectangle of no width.
        let sides = [
            Rect::new(left, lower, right, lower),
            Rect::new(right, lower, right, upper),
            Rect::new(left, upper, right, upper),
            Rect::new(left, lower, left, upper),
        ];
        match sides.map(|side| grown.meets_rect(&side)) {
            [false, false, false, false] => Breach::None,
            [true, false, false, false] => Breach::One(0),
            [false, true, false, false] => Breach::One(1),
            [false, false, true, false] => Breach::One(2),
            [false, false, false, true] => Breach::One(3),
            [true, true, false, false] => Breach::Corner(0, 1),
            [false, true, true, false] => Breach::Corner(1, 2),
            [false, false, true, true] => Breach::Corner(2, 3),
            [true, false, false, true] => Breach::Corner(3, 0),
            _ => Breach::Other,
        }
    }

    /// What `grown` breaches of a tile cut by the field's edge.
    pub(super) fn of_piece(grown: &Shape, piece: &Polygon) -> Breach {
        let mut breached = piece.edges().zip(0u16..).filter(|(edge, _)| grown.meets_segment(edge));
        match (breached.next(), breached.next(), breached.next()) {
            (None, ..) => Breach::None,
            (Some((_, one)), None, _) => Breach::One(one),
            (Some((a, i)), Some((b, j)), None) if share_convex_corner(a, b) => Breach::Corner(i, j),
            (Some((a, i)), Some((b, j)), None) if share_convex_corner(b, a) => Breach::Corner(j, i),
            _ => Breach::Other,
        }
    }
}

/// Whether the boundary goes from one edge to the next in a left turn.
fn share_convex_corner(before: Segment, after: Segment) -> bool {
    before.to == after.from && before.from.cross(before.to, after.to) > 0
}

/// Which side of a whole tile an edge lies on.
pub(super) fn side_of(edge: Segment, tile: &Rect) -> TileSide {
    let (from, to) = (edge.from, edge.to);
    if from.v == tile.lower && to.v == tile.lower {
        TileSide::Nose
    } else if from.v == tile.upper && to.v == tile.upper {
        TileSide::Head
    } else if from.u == tile.left && to.u == tile.left {
        TileSide::Left
    } else if from.u == tile.right && to.u == tile.right {
        TileSide::Right
    } else {
        TileSide::FieldEdge
    }
}
