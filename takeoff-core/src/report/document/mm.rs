//! Shapes in millimetres.
use crate::geometry::Polygon;

/// Rings of `[u, v]`, the outer one first.
pub(super) fn rings_mm(polygon: &Polygon) -> Vec<Vec<[f64; 2]>> {
    polygon.rings().iter().map(|ring| ring.iter().map(|p| p.mm()).collect()).collect()
}
