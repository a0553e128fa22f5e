//! A place on a slope, on the half-nanometre grid.
use super::SlopePoint;
use crate::units::Length;

/// Grid steps in a millimetre.
pub const GRID_PER_MM: f64 = 2e6;

/// A length on the grid: twice its nanometres.
pub fn grid(length: Length) -> i64 {
    2 * length.nm()
}

/// Half of a length on the grid, which is exact: as many steps as the length has nanometres.
pub fn half(length: Length) -> i64 {
    length.nm()
}

/// The length of a whole number of nanometres, an even number of grid steps; the reverse of [`grid`].
pub fn whole(steps: i64) -> Length {
    Length::from_nm(steps / 2)
}

/// Grid steps in millimetres.
pub fn to_mm(steps: i64) -> f64 {
    steps as f64 / GRID_PER_MM
}

/// A place on a slope in grid steps: `u` along the eave, `v` up the slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Point {
    /// Along the eave.
    pub u: i64,
    /// Up the slope.
    pub v: i64,
}

impl Point {
    /// A point from grid steps.
    pub const fn new(u: i64, v: i64) -> Point {
        Point { u, v }
    }

    /// In millimetres, `[u, v]`.
    pub fn mm(self) -> [f64; 2] {
        [to_mm(self.u), to_mm(self.v)]
    }

    /// Twice the signed area of the triangle `self, b, c`: positive when they turn left.
    pub fn cross(self, b: Point, c: Point) -> i128 {
        let (bu, bv) = (i128::from(b.u - self.u), i128::from(b.v - self.v));
        let (cu, cv) = (i128::from(c.u - self.u), i128::from(c.v - self.v));
        bu * cv - bv * cu
    }
}

impl From<SlopePoint> for Point {
    fn from(at: SlopePoint) -> Point {
        Point::new(grid(at.u), grid(at.v))
    }
}
