//! Three-course work over the edges of a deck flashing.
use schemars::JsonSchema;
use serde::Serialize;

use crate::deck;
use crate::slope_takeoff;

/// Roof cement, mesh and roof cement over the edges of a deck flashing.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ThreeCourse {
    /// The post.
    pub post: String,
    /// The bands on the left, at the top and on the right: left, lower, right, upper of each.
    pub bands_mm: [[f64; 4]; 3],
    /// What the bands cover.
    pub area_mm2: f64,
    /// Mesh that they take, the laps at the corners counted.
    pub mesh_mm: f64,
    /// Roof cement: area × film × coats.
    pub cement_mm3: f64,
}

impl ThreeCourse {
    /// The work at one post of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, work: &deck::ThreeCourse) -> ThreeCourse {
        ThreeCourse {
            post: slope.post_name(work.post).to_owned(),
            bands_mm: work.bands.map(|band| band.mm()),
            area_mm2: work.area.mm2(),
            mesh_mm: work.mesh.mm(),
            cement_mm3: work.cement.mm3(),
        }
    }
}
