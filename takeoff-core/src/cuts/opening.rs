//! The opening that a post needs in the tile.
use crate::geometry::{Ellipse, Point, grid, half, to_mm};
use crate::model::{Assembly, Axis, Post, Slope};
use crate::units::Length;

/// An opening and how well the post fits through it.
#[derive(Clone, Copy, Debug)]
pub struct Opening {
    /// The ellipse, on the slope.
    pub ellipse: Ellipse,
    /// The least clearance left round the post, millimetres; below zero the post does not pass.
    pub least_clearance_mm: f64,
}

/// The opening for a post of `assembly` at the origin of a slope.
///
/// # Formula
///
/// `ρ = r + g`, radius and clearance; where hole saws are given and the post stands square to the deck, `ρ`
/// is half the smallest saw of at least `2(r + g)`.
/// A plumb post leans through the tile's two layers, each `t` thick: semi-axes `ρ` along `u` and
/// `ρ / cos θ + t · tan θ` along `v`, the centre moved up-slope by `h · tan θ`, where `h` is the height over
/// the deck of the surface between the two layers of a head lap (batten height + `t` unless the job gives it).
/// Each is rounded once: the doubled semi-axis and the move to the nanometre, half away from zero.
///
/// The least clearance left, square to the post: a normal post's is `ρ − r`. Seen along a plumb post, the opening is an
/// ellipse of semi-axes `ρ` and `β = b · cos θ`, and the post a circle of radius `r` that wanders by `t · sin θ = β − ρ`
/// up and down from the middle surface to the tile's outer faces. In a direction whose sine is `s` there is left
/// `sqrt(ρ² + (β² − ρ²)·s²) − r − (β − ρ)·s`, least where `s² = ρ / 2(β + ρ)`: `ρ · sqrt(2ρ / (β + ρ)) − r`.
///
/// # Example
///
/// A 1 1/2 in post with 1/4 in clearance, normal: `ρ` is 1 in. Plumb at 12:12 through tile 1/2 in thick, 1 in
/// batten: semi-axis along `v` 1 · √2 + 1/2 = 1.914 in, the centre 1 1/2 in up-slope; `β` is 1.354 in and the least clearance
/// √(2 / 2.354) − 3/4 = 0.172 in.
pub fn opening_of(assembly: &Assembly, slope: &Slope) -> Opening {
    let radius_mm = assembly.post_diameter.mm() / 2.0;
    let least_diameter = assembly.post_diameter + assembly.clearance + assembly.clearance;
    match assembly.axis {
        Axis::Normal => {
            let saw = assembly.hole_saws.iter().find(|&&saw| saw >= least_diameter);
            let a = half(saw.copied().unwrap_or(least_diameter));
            let ellipse = Ellipse { centre: Point::new(0, 0), a, b: a };
            Opening { ellipse, least_clearance_mm: to_mm(a) - radius_mm }
        }
        Axis::Plumb => {
            let (cos, tan) = (slope.pitch.cos(), slope.pitch.tan());
            let thickness = slope.tile.thickness;
            let a = half(least_diameter);
            // Doubled semi-axis in nanometres, which is the semi-axis in grid steps.
            let b = (a as f64 / cos + grid(thickness) as f64 * tan).round() as i64;
            let surface = lap_surface(assembly, slope);
            let up = (surface.nm() as f64 * tan).round() as i64;
            let ellipse = Ellipse { centre: Point::new(0, 2 * up), a, b };
            let (rho, beta) = (to_mm(a), to_mm(b) * cos);
            let least_clearance_mm = rho * (2.0 * rho / (beta + rho)).sqrt() - radius_mm;
            Opening { ellipse, least_clearance_mm }
        }
    }
}

/// The openings of a slope's posts, one a post, as if each stood at the origin.
pub fn openings_of(slope: &Slope) -> Vec<Opening> {
    slope.posts.iter().map(|post| opening_of(&post.assembly, slope)).collect()
}

impl Opening {
    /// The same opening for a post elsewhere.
    pub fn at(&self, post: Point) -> Ellipse {
        let Ellipse { centre, a, b } = self.ellipse;
        Ellipse { centre: Point::new(post.u + centre.u, post.v + centre.v), a, b }
    }

    /// The opening of a post where it stands.
    pub fn for_post(&self, post: &Post) -> Ellipse {
        self.at(Point::from(post.at))
    }
}

/// Height over the deck of the surface between the two layers of a head lap.
fn lap_surface(assembly: &Assembly, slope: &Slope) -> Length {
    let batten = slope.battens.as_ref().map_or(Length::ZERO, |battens| battens.height);
    assembly.lap_surface_height.unwrap_or(batten + slope.tile.thickness)
}
