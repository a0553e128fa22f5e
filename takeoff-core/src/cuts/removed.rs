//! How much tile a cut takes away, and how long the saw's way is.
use std::f64::consts::{FRAC_PI_2, PI};

use super::sweep::swept;
use super::{Breach, Footprint, Judged, Shape, TileSide};
use crate::geometry::{Ellipse, Rect, ellipse_arc_length, to_mm};
use crate::num::math::{acos, asin};

/// What a cut takes away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Removed {
    /// Area taken out, mm².
    pub area_mm2: f64,
    /// Blade path: the boundary of what is removed, inside the tile, mm.
    pub path_mm: f64,
}

/// What a cut takes away of its tile.
///
/// # Formula
///
/// A *hole* takes the opening; a *notch* the opening and all that lies between it and the breached edge; a
/// *corner* the opening and all that lies between it and the two edges, the corner piece with it; of a
/// *severed* tile it is the opening within the tile. Arcs are exact.
///
/// # Example
///
/// A disc of radius 1 in whose centre lies 3/4 in above the nose makes a notch of
/// `π/2 + 2 · 1 · 3/4 = 3.0708` in², sawn along `π + 2 · 3/4 = 4.6416` in.
pub fn removed(judged: &Judged) -> Removed {
    if let (Footprint::Whole(tile), Shape::Ellipse(ellipse)) = (&judged.footprint, judged.shape) {
        match judged.breach {
            Breach::None => return hole(&ellipse),
            Breach::One(edge) => return notch(&ellipse, tile, side(edge)),
            Breach::Corner(one, other) => return corner(&ellipse, tile, side(one), side(other)),
            Breach::Other => {}
        }
    }
    swept(judged)
}

/// The side of a whole tile that is the edge at a place of its boundary.
fn side(place: u16) -> TileSide {
    match place {
        0 => TileSide::Nose,
        1 => TileSide::Right,
        2 => TileSide::Head,
        _ => TileSide::Left,
    }
}

fn hole(ellipse: &Ellipse) -> Removed {
    let (a, b) = (to_mm(ellipse.a), to_mm(ellipse.b));
    Removed { area_mm2: PI * a * b, path_mm: 2.0 * ellipse_arc_length(a, b, 0.0, PI) }
}

/// The opening seen with the breached side down: semi-axes along and across that side, and how far inside it
/// the centre lies (negative: beyond it).
fn seen_from(ellipse: &Ellipse, tile: &Rect, side: TileSide) -> (f64, f64, f64) {
    let (a, b) = (to_mm(ellipse.a), to_mm(ellipse.b));
    let centre = ellipse.centre;
    match side {
        TileSide::Nose | TileSide::FieldEdge => (a, b, to_mm(centre.v - tile.lower)),
        TileSide::Head => (a, b, to_mm(tile.upper - centre.v)),
        TileSide::Left => (b, a, to_mm(centre.u - tile.left)),
        TileSide::Right => (b, a, to_mm(tile.right - centre.u)),
    }
}

/// A notch through one side: half the ellipse and the strip below it, or the cap that reaches into the tile.
fn notch(ellipse: &Ellipse, tile: &Rect, side: TileSide) -> Removed {
    let (a, b, inside) = seen_from(ellipse, tile, side);
    if inside >= 0.0 {
        Removed {
            area_mm2: a * (PI * b / 2.0 + 2.0 * inside),
            path_mm: ellipse_arc_length(a, b, 0.0, PI) + 2.0 * inside,
        }
    } else {
        let sine = (-inside / b).min(1.0);
        let from = asin(sine);
        Removed {
            area_mm2: a * b * (FRAC_PI_2 - from - sine * cosine(sine)),
            path_mm: ellipse_arc_length(a, b, from, PI - from),
        }
    }
}

/// A corner through two sides that meet: seen with one side down and the other on the left.
fn corner(ellipse: &Ellipse, tile: &Rect, one: TileSide, other: TileSide) -> Removed {
    let down = if matches!(one, TileSide::Nose | TileSide::Head) { one } else { other };
    let beside = if down == one { other } else { one };
    let (a, b, above) = seen_from(ellipse, tile, down);
    let (_, _, right) = seen_from(ellipse, tile, beside);
    // Left of the centre the cut's top is level; right of it the top is the ellipse, down to the centre or to
    // the lower side. In the ellipse's angle it runs from `from` (right) to `to` (left).
    let level = right.max(0.0);
    let drop = above.max(0.0);
    let sine = (-above / b).clamp(0.0, 1.0);
    let cosine_at_side = (-right / a).clamp(0.0, 1.0);
    let from = asin(sine);
    let to = acos(cosine_at_side).max(from);
    // ∫ (b sin θ + above) a sin θ dθ from `from` to `to`, which is the part right of centre and side.
    let under_arc = a * b / 2.0
        * ((to - cosine_at_side * cosine(cosine_at_side)) - (from - sine * cosine(sine)))
        + above * a * (cosine(sine) - cosine_at_side);
    Removed {
        area_mm2: level * (b + above) + under_arc,
        path_mm: level + drop + ellipse_arc_length(a, b, from, to),
    }
}

/// `sqrt(1 − x²)`: the cosine to a sine, and the sine to a cosine.
fn cosine(x: f64) -> f64 {
    (1.0 - x * x).max(0.0).sqrt()
}
