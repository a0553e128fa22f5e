//! Where a slope stands in the world: its frame, given or fitted to surveyed points.
use nalgebra::{DMatrix, Vector3};

use crate::num::math::{atan2, cos, hypot, sin, sqrt};
use crate::units::Length;

/// A slope's frame in the world, east, north and up in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    origin: Vector3<f64>,
    along_eave: Vector3<f64>,
    up_slope: Vector3<f64>,
}

impl Frame {
    /// From the origin (`u = v = 0`), the azimuth of the down-slope direction, clockwise from north, and the
    /// pitch, both in degrees.
    ///
    /// # Example
    ///
    /// A slope that falls to the south (azimuth 180°) at 45°: seen from outside looking up it, right is east,
    /// and 1000 mm up the slope is 707 mm north and 707 mm up.
    /// ```
    /// # use takeoff_core::{roof::Frame, units::Length};
    /// let frame = Frame::new([Length::ZERO; 3], 180.0, 45.0);
    /// let at = frame.world(Length::MM, Length::from_nm(1_000_000_000)).map(f64::round);
    /// assert_eq!(at, [1.0, 707.0, 707.0]);
    /// ```
    pub fn new(origin: [Length; 3], azimuth_deg: f64, pitch_deg: f64) -> Frame {
        Frame::at(Vector3::from(origin.map(Length::mm)), azimuth_deg, pitch_deg)
    }

    fn at(origin: Vector3<f64>, azimuth_deg: f64, pitch_deg: f64) -> Frame {
        let (azimuth, pitch) = (azimuth_deg.to_radians(), pitch_deg.to_radians());
        let (east, north) = (sin(azimuth), cos(azimuth));
        Frame {
            origin,
            along_eave: Vector3::new(-north, east, 0.0),
            up_slope: Vector3::new(-east * cos(pitch), -north * cos(pitch), sin(pitch)),
        }
    }

    /// Where a point of the slope stands, millimetres.
    pub fn world(&self, u: Length, v: Length) -> [f64; 3] {
        (self.origin + self.along_eave * u.mm() + self.up_slope * v.mm()).into()
    }
}

/// A plane fitted to surveyed points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaneFit {
    /// The first surveyed point, moved onto the plane: it marks `u = v = 0`. Millimetres.
    pub origin_mm: [f64; 3],
    /// Unit normal, upward.
    pub normal: [f64; 3],
    /// Azimuth of the down-slope direction, degrees clockwise from north, in [0, 360).
    pub azimuth_deg: f64,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// `sqrt(Σd²/n)` of the points' distances normal to the plane, millimetres.
    pub rms_mm: f64,
    /// The greatest of these distances, millimetres.
    pub greatest_mm: f64,
}

/// Why no plane could be fitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FitError {
    /// Fewer than three points.
    TooFew,
    /// All points on a line, or in one place.
    Collinear,
    /// The plane is level, so that it has no down-slope direction.
    Level,
}

impl PlaneFit {
    /// Fits a plane to points (east, north, up) by total least squares: its normal is the right singular vector
    /// of the centred coordinates to the least singular value.
    ///
    /// # Errors
    ///
    /// Fewer than three points, points on a line, or a level plane.
    ///
    /// # Source
    ///
    /// G. H. Golub, C. F. Van Loan, *An Analysis of the Total Least Squares Problem*, SIAM J. Numer. Anal. 17
    /// (1980).
    ///
    /// # Example
    ///
    /// Points on `z = y/2` rise 6 in 12: pitch 26.565°, and the slope falls to the south.
    /// ```
    /// # use takeoff_core::{roof::PlaneFit, units::Length};
    /// let mm = |x: i64| Length::from_nm(x * 1_000_000);
    /// let points = [[0, 0, 0], [4, 0, 0], [0, 2, 1], [6, 8, 4]].map(|p| p.map(mm));
    /// let fit = PlaneFit::to(&points).unwrap();
    /// assert!((fit.pitch_deg - 26.565051).abs() < 1e-6 && (fit.azimuth_deg - 180.0).abs() < 1e-9);
    /// assert!(fit.rms_mm < 1e-9);
    /// ```
    pub fn to(points: &[[Length; 3]]) -> Result<PlaneFit, FitError> {
        if points.len() < 3 {
            return Err(FitError::TooFew);
        }
        let points: Vec<Vector3<f64>> = points.iter().map(|p| Vector3::from(p.map(Length::mm))).collect();
        let centroid = points.iter().sum::<Vector3<f64>>() / points.len() as f64;
        let centred = DMatrix::from_fn(points.len(), 3, |row, axis| (points[row] - centroid)[axis]);
        let svd = centred.svd(false, true);
        let (values, directions) = (&svd.singular_values, svd.v_t.ok_or(FitError::Collinear)?);
        // Singular values come in descending order. Two that vanish leave a line or a point.
        if values[1] <= 1e-9 * values[0] || values[0] == 0.0 {
            return Err(FitError::Collinear);
        }
        let row = Vector3::new(directions[(2, 0)], directions[(2, 1)], directions[(2, 2)]);
        let normal = if row.z < 0.0 { -row } else { row };
        let level = hypot(normal.x, normal.y);
        if level <= 1e-9 {
            return Err(FitError::Level);
        }
        let distances = points.iter().map(|p| (p - centroid).dot(&normal));
        let squares: f64 = distances.clone().map(|d| d * d).sum();
        let first = points[0] - normal * (points[0] - centroid).dot(&normal);
        Ok(PlaneFit {
            origin_mm: first.into(),
            normal: normal.into(),
            azimuth_deg: atan2(normal.x, normal.y).to_degrees().rem_euclid(360.0),
            pitch_deg: atan2(level, normal.z).to_degrees(),
            rms_mm: sqrt(squares / points.len() as f64),
            greatest_mm: distances.map(f64::abs).fold(0.0, f64::max),
        })
    }

    /// The frame of the fitted plane.
    pub fn frame(&self) -> Frame {
        Frame::at(Vector3::from(self.origin_mm), self.azimuth_deg, self.pitch_deg)
    }
}
