//! A hole's outline, unrolled.
use std::f64::consts::TAU;

use super::Profile;
use crate::num::math::{cos, sin};

/// A point of the tile's face, unrolled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FacePoint {
    /// From the left edge along the face, in millimetres.
    pub developed_mm: f64,
    /// Up-slope from the hole's centre, in millimetres.
    pub up_mm: f64,
}

impl Profile {
    /// The outline of a hole on the face, unrolled for a paper template: `points` points, anticlockwise
    /// from the hole's right end, equally spaced in the ellipse's parameter; the first is not
    /// repeated. A number that four divides holds all four ends.
    ///
    /// In plan the hole is an ellipse about `centre_mm` from the left edge, with the semi-axes
    /// `across_mm` and `up_mm`; on the face it is as much wider as the face is longer there.
    ///
    /// # Example
    ///
    /// A 50 mm hole on the crest of a half-round roll of 100 mm: from the roll's axis the hole's ends
    /// are seen at asin(25/50) = 30° to either side, so it is 50 · π/3 = 52.36 mm wide on the face.
    ///
    /// ```
    /// use takeoff_core::profile::Profile;
    /// use takeoff_core::units::Length;
    /// let mm = |n: i64| Length::from_nm(n * 1_000_000);
    /// let outline = Profile::arcs(mm(50), mm(100))?.trace(50.0, 25.0, 25.0, 72);
    /// let (right, left) = (outline[0], outline[36]);
    /// assert!((right.developed_mm - left.developed_mm - 52.36).abs() < 0.005);
    /// assert!((outline[18].up_mm - 25.0).abs() < 1e-12);
    /// # Ok::<(), takeoff_core::profile::ProfileError>(())
    /// ```
    pub fn trace(&self, centre_mm: f64, across_mm: f64, up_mm: f64, points: u32) -> Vec<FacePoint> {
        (0..points)
            .map(|i| {
                let angle = TAU * f64::from(i) / f64::from(points);
                FacePoint {
                    developed_mm: self.developed(centre_mm + across_mm * cos(angle)),
                    up_mm: up_mm * sin(angle),
                }
            })
            .collect()
    }
}
