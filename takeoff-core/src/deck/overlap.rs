//! Which pieces of two tiles lie on each other.
use crate::cuts::Footprint;
use crate::geometry::{Point, Polygon, Rect};
use crate::roof::Field;

/// The pieces of tile `other` whose interiors meet one piece of tile `own`, by their numbers.
///
/// Each part of the field that both rectangles hold belongs to one piece of either tile: a point inside it tells
/// which.
pub(super) fn pieces_meeting(
    field: &Field,
    own: &Rect,
    piece: Option<u16>,
    other: &Rect,
) -> Vec<Option<u16>> {
    let (own_pieces, other_pieces) = (Footprint::pieces(field, own), Footprint::pieces(field, other));
    let common = field.pieces_of(&own.intersection(other));
    let mut meeting: Vec<Option<u16>> = common
        .iter()
        .filter_map(|part| {
            let inside = inner_point(part)?;
            let own = piece_at(&own_pieces, inside)?;
            let other = piece_at(&other_pieces, inside)?;
            (own.number() == piece).then_some(other.number())
        })
        .collect();
    meeting.sort_unstable();
    meeting.dedup();
    meeting
}

/// The piece that holds a point.
fn piece_at(pieces: &[Footprint], point: Point) -> Option<&Footprint> {
    match pieces {
        [only] => Some(only),
        _ => pieces.iter().find(|piece| piece.polygon().contains(point)),
    }
}

/// A point well inside a polygon: on the line midway between the two neighbouring vertices that are farthest
/// apart in `u`, the middle of the longest stretch inside.
fn inner_point(polygon: &Polygon) -> Option<Point> {
    let mut across: Vec<i64> = polygon.rings().iter().flatten().map(|p| p.u).collect();
    across.sort_unstable();
    let (from, to) = across.windows(2).map(|pair| (pair[0], pair[1])).max_by_key(|(from, to)| to - from)?;
    let u = from + (to - from) / 2;
    let crossings = polygon.crossings_at(u);
    let stretches = crossings.chunks_exact(2).map(|pair| (pair[0], pair[1]));
    let (low, high) = stretches.max_by_key(|(low, high)| high - low)?;
    Some(Point::new(u, low + (high - low) / 2))
}
