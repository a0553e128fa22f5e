//! Battens cut out to make room for the deck work, and reset.
use crate::geometry::{Rect, grid};
use crate::model::PostId;
use crate::roof::Site;

/// Nails that hold one reset piece: two an end.
pub const NAILS_A_PIECE: u64 = 4;

/// The pieces of batten cut out and reset, by course and from left to right.
///
/// `deck_areas` holds the deck work of each post, without the hand clearance.
///
/// # Rule
///
/// The batten of course `k` has its upper edge at `nose[k] + L − lug`. Where it meets deck work it is cut; pieces
/// that overlap or touch are one. A piece ends at the field's edge, and at a chimney in its way.
///
/// # Example
///
/// Nose at 25 in, tile 16 1/2 in, lug 1/2 in: the batten of that course runs from 39 1/2 to 41 in. Two flashings
/// over it, from 51 to 61 in and from 58 to 68 in, cut out one piece of 17 in, with 4 nails.
pub fn battens(site: &Site, deck_areas: &[Rect]) -> Vec<BattenPiece> {
    let Some((to_lower, to_upper)) = from_nose(site) else { return Vec::new() };
    let pieces = cut_out(site, deck_areas, to_lower, to_upper).into_iter();
    pieces.map(|piece| piece.reset(site, to_lower, to_upper)).collect()
}

/// How many pieces of batten one post's deck work cuts out, the post standing alone.
pub fn battens_cut(site: &Site, deck_area: &Rect) -> usize {
    from_nose(site).map_or(0, |(lower, upper)| cut_out(site, &[*deck_area], lower, upper).len())
}

/// From a course's nose up to the lower and the upper edge of its batten, where the slope has battens.
fn from_nose(site: &Site) -> Option<(i64, i64)> {
    let battens = site.slope.battens.as_ref()?;
    let to_upper = site.grid.length() - grid(battens.lug);
    Some((to_upper - grid(battens.width), to_upper))
}

/// The stretches of batten that deck work cuts out, those that touch joined.
fn cut_out(site: &Site, deck_areas: &[Rect], to_lower: i64, to_upper: i64) -> Vec<Stretch> {
    let mut stretches: Vec<Stretch> = Vec::new();
    for (post, area) in deck_areas.iter().enumerate() {
        let noses = site.grid.noses();
        let first = noses.partition_point(|nose| nose + to_upper <= area.lower);
        let met = noses.iter().enumerate().skip(first).take_while(|(_, nose)| *nose + to_lower < area.upper);
        for (course, nose) in met {
            let strip = Rect::new(area.left, nose + to_lower, area.right, nose + to_upper);
            let pieces = site.field.pieces_of(&strip);
            stretches.extend(pieces.iter().map(|piece| {
                let Rect { left, right, .. } = piece.bounds();
                Stretch { course, left, right, posts: vec![post] }
            }));
        }
    }
    stretches.sort_unstable_by_key(|stretch| (stretch.course, stretch.left, stretch.posts[0]));

    let mut pieces: Vec<Stretch> = Vec::new();
    for stretch in stretches {
        match pieces.last_mut() {
            Some(last) if last.course == stretch.course && stretch.left <= last.right => {
                last.right = last.right.max(stretch.right);
                last.posts.extend(stretch.posts);
            }
            _ => pieces.push(stretch),
        }
    }
    pieces
}

/// A stretch of the batten of one course, and the posts that take it.
struct Stretch {
    course: usize,
    left: i64,
    right: i64,
    posts: Vec<usize>,
}

impl Stretch {
    fn reset(mut self, site: &Site, to_lower: i64, to_upper: i64) -> BattenPiece {
        self.posts.sort_unstable();
        self.posts.dedup();
        let nose = site.grid.noses()[self.course];
        BattenPiece {
            course: self.course as u32,
            bounds: Rect::new(self.left, nose + to_lower, self.right, nose + to_upper),
            posts: self.posts.into_iter().map(PostId::new).collect(),
        }
    }
}

/// A piece of batten cut out and reset, with [`NAILS_A_PIECE`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BattenPiece {
    /// The course that hangs on it, counted from 0.
    pub course: u32,
    /// From end to end, and from its lower edge to its upper one.
    pub bounds: Rect,
    /// The posts it makes room for.
    pub posts: Vec<PostId>,
}
