//! Three-course work: roof cement, mesh and roof cement in bands over the edges of a deck flashing.
use super::codes::BANDS_MEET;
use super::zone::{deck_area, flashing};
use super::{Method, PatchId, Patches, each_meeting_pair};
use crate::geometry::{Rect, half};
use crate::model::{Post, PostId, Problem};
use crate::roof::Site;
use crate::units::{Area, Length, RealLength, Volume};

/// The bands on the left, at the top and on the right of a post's deck flashing.
///
/// # Rule
///
/// Mesh of width `w` is centred on both side edges and on the upper edge of the flange; the lower edge stays open, so
/// that water under the flange runs out. The side bands end under the top band, which runs over both. A band that
/// crosses the field's edge is counted whole and trimmed on the roof.
///
/// # Example
///
/// A flange from 51 to 61 in along the eave and from 33 to 44 in up the slope, mesh 4 in wide: side bands from 49 to
/// 53 and from 59 to 63 in, both from 33 to 42 in up the slope; the top band from 49 to 63 in, 42 to 46 in up.
pub fn bands(post: &Post, mesh: Length) -> [Rect; 3] {
    let flange = flashing(post);
    let (beside, top) = (half(mesh), flange.upper - half(mesh));
    [
        Rect::new(flange.left - beside, flange.lower, flange.left + beside, top),
        Rect::new(flange.left - beside, top, flange.right + beside, flange.upper + beside),
        Rect::new(flange.right - beside, flange.lower, flange.right + beside, top),
    ]
}

/// What the bands round a flange cover, mm²: `w (a + w) + 2 w (l − w/2)`, `a` its width, `l = d + up` its length.
///
/// # Example
///
/// ```
/// use takeoff_core::{deck::bands_mm2, units::Length};
/// let [a, l, w] = ["10 in", "11 in", "4 in"].map(|text| Length::parse(text).unwrap());
/// let square_inches = bands_mm2(a, l, w) / (25.4 * 25.4);
/// assert!((square_inches - (4.0 * 14.0 + 2.0 * 4.0 * 9.0)).abs() < 1e-9); // 128
/// ```
pub fn bands_mm2(width: Length, length: Length, mesh: Length) -> f64 {
    let [a, l, w] = [width, length, mesh].map(Length::mm);
    w * (a + w) + 2.0 * w * (l - w / 2.0)
}

/// Mesh that the bands round a flange take, mm: `a + 2 l + 2 w`. The side strips run up to the upper edge of the top
/// strip, so that the mesh is double at both corners.
///
/// # Example
///
/// ```
/// use takeoff_core::{deck::mesh_mm, units::Length};
/// let [a, l, w] = ["10 in", "11 in", "4 in"].map(|text| Length::parse(text).unwrap());
/// assert!((mesh_mm(a, l, w) / 25.4 - 40.0).abs() < 1e-9); // a strip of 14 in and two of 13 in
/// ```
pub fn mesh_mm(width: Length, length: Length, mesh: Length) -> f64 {
    (width + length + length + mesh + mesh).mm()
}

/// Roof cement on an area, mm³: area × film × coats.
///
/// # Example
///
/// A coat of 1/8 in on 100 sq ft is 1800 in³, 7.792 US gal (a gallon is 231 in³):
///
/// ```
/// use takeoff_core::{deck::cement_mm3, units::{Length, Volume}};
/// let square = 100.0 * 304.8 * 304.8;
/// let gallons = cement_mm3(square, Length::parse("1/8 in")?, 1) / Volume::parse("1 gal")?.mm3();
/// assert!((gallons - 7.792).abs() < 5e-4);
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
pub fn cement_mm3(area_mm2: f64, film: Length, coats: u32) -> f64 {
    area_mm2 * film.mm() * f64::from(coats)
}

/// The three-course work of a slope, post by post; `methods` holds one method a post.
pub fn three_course(site: &Site, methods: &[Method]) -> Vec<ThreeCourse> {
    let terms = &site.practice.three_course;
    let posts = site.slope.posts.iter().enumerate().zip(methods);
    posts
        .filter(|(_, method)| **method == Method::ThreeCourse)
        .map(|((place, post), _)| {
            let flange = &post.assembly.deck_flashing;
            let length = flange.down + flange.up;
            let area_mm2 = bands_mm2(flange.width, length, terms.mesh_width);
            ThreeCourse {
                post: PostId::new(place),
                bands: bands(post, terms.mesh_width),
                area: Area::from_mm2(area_mm2),
                mesh: RealLength::from_mm(mesh_mm(flange.width, length, terms.mesh_width)),
                cement: Volume::from_mm3(cement_mm3(area_mm2, terms.film, terms.coats)),
            }
        })
        .collect()
}

/// A finding for every post whose bands, or the flange inside them, meet another post's flange or bands, or a patch:
/// which is laid first is then settled on the roof. Flanges that meet each other have their own finding.
///
/// A flange and its bands together fill their bounding rectangle.
pub fn bands_that_meet(site: &Site, methods: &[Method], patches: &Patches) -> Vec<Problem> {
    // Without bands there is nothing to look for, however many flanges lie on one spot.
    if !methods.contains(&Method::ThreeCourse) {
        return Vec::new();
    }
    let posts = &site.slope.posts;
    let laid = posts.iter().zip(methods).map(|(post, method)| match method {
        Method::ThreeCourse => deck_area(site, post, method),
        _ => flashing(post),
    });
    let laid: Vec<Rect> = laid.chain(patches.patches.iter().map(|patch| patch.bounds)).collect();
    // Of each post, the posts (and beyond them the patches) that its bands meet.
    let mut met: Vec<Vec<usize>> = vec![Vec::new(); posts.len()];
    each_meeting_pair(&laid, |a, b| {
        for (own, other) in [(a, b), (b, a)] {
            let is_three_course = methods.get(own) == Some(&Method::ThreeCourse);
            let flanges_meet =
                || posts.get(other).is_some_and(|other| flashing(other).meets(&flashing(&posts[own])));
            if is_three_course && !flanges_meet() {
                met[own].push(other);
            }
        }
    });
    let name = |other: usize| match posts.get(other) {
        Some(post) if methods[other] == Method::ThreeCourse => format!("the bands of `{}`", post.name),
        Some(post) => format!("the deck flashing of `{}`", post.name),
        None => format!("patch `{}`", PatchId::new(other - posts.len())),
    };
    posts
        .iter()
        .zip(met)
        .filter_map(|(post, met)| {
            let first = name(*met.iter().min()?);
            let more = if met.len() > 1 { format!(" and {} more", met.len() - 1) } else { String::new() };
            let message = format!("the three-course bands of `{}` meet {first}{more}", post.name);
            let help =
                "settle with the roofer which is laid first, so that water runs over it, or move a post";
            Some(Problem::new(BANDS_MEET, message, help, &post.path))
        })
        .collect()
}

/// Roof cement, mesh and roof cement over the edges of a deck flashing.
#[derive(Clone, Debug, PartialEq)]
pub struct ThreeCourse {
    /// The post.
    pub post: PostId,
    /// The bands on the left, at the top and on the right.
    pub bands: [Rect; 3],
    /// Area of the bands.
    pub area: Area,
    /// Mesh that they take, the laps at the corners counted.
    pub mesh: RealLength,
    /// Roof cement: area × film × coats.
    pub cement: Volume,
}
