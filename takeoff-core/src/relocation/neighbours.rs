//! Which openings lie near a place.
use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree};

use crate::geometry::{Ellipse, Rect};

/// The bounding rectangles of a slope's openings, to be looked up by place.
pub struct Neighbours {
    tree: RTree<GeomWithData<Rectangle<[f64; 2]>, usize>>,
}

impl Neighbours {
    /// Over the openings of a slope.
    pub fn of(openings: &[Ellipse]) -> Neighbours {
        let bounds = openings.iter().enumerate().map(|(post, opening)| {
            let aabb = envelope(&opening.bounds());
            GeomWithData::new(Rectangle::from_aabb(aabb), post)
        });
        Neighbours { tree: RTree::bulk_load(bounds.collect()) }
    }

    /// The posts other than `post` whose opening's bounds meet a rectangle, ascending.
    pub fn meeting(&self, rect: &Rect, post: usize, openings: &[Ellipse]) -> Vec<usize> {
        let candidates = self.tree.locate_in_envelope_intersecting(&envelope(rect)).map(|found| found.data);
        let mut found: Vec<usize> =
            candidates.filter(|&other| other != post && openings[other].bounds().meets(rect)).collect();
        found.sort_unstable();
        found
    }
}

/// The openings that are judged together with a post's, if they meet one tile: those nearer than the web to it, to
/// one of these, and so on.
pub fn partners_of(openings: &[Ellipse], neighbours: &Neighbours, post: usize, web: i64) -> Vec<Ellipse> {
    let mut chain = vec![post];
    let mut next = 0;
    while let Some(&member) = chain.get(next) {
        let bounds = openings[member].bounds().grown(web);
        let near = neighbours.meeting(&bounds, member, openings);
        chain.extend(near.into_iter().filter(|other| !chain.contains(other)).collect::<Vec<_>>());
        next += 1;
    }
    chain.drain(..1);
    chain.into_iter().map(|other| openings[other]).collect()
}

/// Grid steps are exact as `f64` within the limits (±4·10¹³ is below 2⁵³).
fn envelope(rect: &Rect) -> AABB<[f64; 2]> {
    AABB::from_corners([rect.left as f64, rect.lower as f64], [rect.right as f64, rect.upper as f64])
}
