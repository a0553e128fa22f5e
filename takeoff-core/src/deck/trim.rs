//! Ridge, hip and rake trim that comes off over the work zones.
use crate::geometry::{Rect, Segment, to_mm};
use crate::model::EdgeKind;
use crate::roof::Field;
use crate::units::RealLength;

/// The length of ridge, hip and rake inside the union of the work zones, by kind; kinds with none are left out.
///
/// # Example
///
/// Two zones that reach over a ridge from 40 to 62 in and from 60 to 80 in take up 40 in of ridge trim.
pub fn trim(field: &Field, zones: &[Rect]) -> Vec<Trim> {
    [EdgeKind::Ridge, EdgeKind::Hip, EdgeKind::Rake]
        .into_iter()
        .filter_map(|kind| {
            let length_mm = field.edges(&[kind]).map(|(_, edge)| inside(&edge, zones)).sum();
            (length_mm > 0.0).then_some(Trim { edge: kind, length: RealLength::from_mm(length_mm) })
        })
        .collect()
}

/// Length of an edge inside the union of rectangles.
fn inside(edge: &Segment, zones: &[Rect]) -> f64 {
    let run = [to_mm(edge.to.u - edge.from.u), to_mm(edge.to.v - edge.from.v)];
    let length = (run[0] * run[0] + run[1] * run[1]).sqrt();
    let met = zones.iter().filter(|zone| zone.meets_segment(edge));
    let mut stretches: Vec<(f64, f64)> = met.map(|zone| stretch(edge, zone)).collect();
    stretches.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut covered, mut reached) = (0.0, 0.0_f64);
    for (from, to) in stretches {
        covered += (to - from.max(reached)).max(0.0);
        reached = reached.max(to);
    }
    covered * length
}

/// From which to which share of an edge lies in a rectangle that it meets.
fn stretch(edge: &Segment, zone: &Rect) -> (f64, f64) {
    let sides =
        [(edge.from.u, edge.to.u, zone.left, zone.right), (edge.from.v, edge.to.v, zone.lower, zone.upper)];
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for (start, end, low, high) in sides {
        if start != end {
            let share = |place: i64| (place - start) as f64 / (end - start) as f64;
            from = from.max(share(low).min(share(high)));
            to = to.min(share(low).max(share(high)));
        }
    }
    (from, to)
}

/// Trim taken up along edges of one kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trim {
    /// Ridge, hip or rake.
    pub edge: EdgeKind,
    /// Length inside the union of the work zones.
    pub length: RealLength,
}
