//! Where a slope stands in the world.
use schemars::JsonSchema;
use serde::Serialize;

use crate::slope_takeoff;
use crate::units::RealLength;

/// Where a slope stands in the world.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PlaceTakeoff {
    /// East, north, up of `u = v = 0`.
    pub origin_mm: [f64; 3],
    /// Azimuth of the down-slope direction, degrees clockwise from north.
    pub azimuth_deg: f64,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Root mean square distance of the surveyed points from the plane.
    pub rms_mm: Option<f64>,
    /// Greatest distance of a surveyed point from the plane.
    pub greatest_mm: Option<f64>,
}

impl From<&slope_takeoff::PlaceTakeoff> for PlaceTakeoff {
    fn from(place: &slope_takeoff::PlaceTakeoff) -> PlaceTakeoff {
        PlaceTakeoff {
            origin_mm: place.origin.map(RealLength::mm),
            azimuth_deg: place.azimuth_deg,
            pitch_deg: place.pitch_deg,
            rms_mm: place.fit.map(|fit| fit.rms.mm()),
            greatest_mm: place.fit.map(|fit| fit.greatest.mm()),
        }
    }
}
