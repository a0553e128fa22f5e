//! The openings that one post's is judged together with, wherever it goes.
use std::collections::BTreeMap;
use std::ops::Range;

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree};

use crate::cuts::{FewRects, Shape, SlopeCut, merged_without_each};
use crate::geometry::Rect;
use crate::roof::TileId;

use super::Neighbours;

/// Cuts in one piece of tile up to which it is quicker to look at each.
const FEW_CUTS: usize = 16;

/// The cuts of a slope, to be looked up by piece of tile and place.
///
/// What the takeoff judges as one is one rectangle here, so that a post on a spot where a thousand stand looks at
/// one partner and not at a thousand.
pub struct Crowd<'a> {
    cuts: &'a [SlopeCut],
    /// Of each post, the places of its cuts in the list, ascending.
    of_post: &'a [Vec<usize>],
    web: i64,
    /// The rectangles of the cuts for several posts.
    joined: RTree<Rectangle<[f64; 2]>>,
    /// By the place of such a cut: what is left of it without each of its posts.
    without: BTreeMap<usize, Vec<FewRects>>,
    /// The cuts in pieces with many: by the place of the piece's first, and the rectangle.
    crowded: RTree<GeomWithData<Rectangle<[f64; 3]>, usize>>,
}

impl<'a> Crowd<'a> {
    /// From the cuts of a slope, by tile and piece; of each post the places of its cuts; its opening's bounds.
    pub fn new(cuts: &'a [SlopeCut], of_post: &'a [Vec<usize>], bounds: &[Rect], web: i64) -> Crowd<'a> {
        let several = || cuts.iter().enumerate().filter(|(_, cut)| cut.posts.len() > 1);
        let joined = several().map(|(_, cut)| Rectangle::from_aabb(flat(&rect_of(cut))));
        let without = several().map(|(place, cut)| {
            let own: Vec<Rect> = cut.posts.iter().map(|&post| bounds[post]).collect();
            (place, merged_without_each(&own, web))
        });
        let mut crowded = Vec::new();
        let mut first = 0;
        for of_piece in cuts.chunk_by(|a, b| piece_of(a) == piece_of(b)) {
            if of_piece.len() > FEW_CUTS {
                crowded.extend((first..).zip(of_piece).map(|(place, cut)| {
                    GeomWithData::new(Rectangle::from_aabb(in_piece(first, &rect_of(cut))), place)
                }));
            }
            first += of_piece.len();
        }
        Crowd {
            cuts,
            of_post,
            web,
            joined: RTree::bulk_load(joined.collect()),
            without: without.collect(),
            crowded: RTree::bulk_load(crowded),
        }
    }

    /// Those of one post.
    pub fn partners_of(&'a self, post: usize, neighbours: &Neighbours, bounds: &Rect) -> Partners<'a> {
        let near = neighbours.any_near(bounds, self.web, post);
        Partners { crowd: (near || self.joined.size() > 0).then_some(self), post, near }
    }

    /// The cuts in a piece, as places in the list.
    fn in_piece(&self, tile: TileId, piece: Option<u16>) -> Range<usize> {
        let key = (tile, piece);
        let first = self.cuts.partition_point(|cut| piece_of(cut) < key);
        let few = self.cuts[first..].iter().take(FEW_CUTS + 1).take_while(|cut| piece_of(cut) == key).count();
        let after =
            if few > FEW_CUTS { self.cuts.partition_point(|cut| piece_of(cut) <= key) } else { first + few };
        first..after
    }
}

/// The openings that one post's is judged together with where they meet one piece of tile.
#[derive(Clone, Copy, Default)]
pub struct Partners<'a> {
    /// `None` where no two openings are near enough.
    crowd: Option<&'a Crowd<'a>>,
    post: usize,
    /// Whether another opening is near to the post's where it stands.
    near: bool,
}

impl Partners<'_> {
    /// The rectangle round the opening `own` and all in one piece of tile that are judged together with it; `None` where
    /// it is alone.
    pub(super) fn judged_with(&self, tile: TileId, piece: Option<u16>, own: &Rect) -> Option<Rect> {
        let crowd = self.crowd_near(own)?;
        let near = self.grow(crowd, crowd.in_piece(tile, piece), own);
        near.into_iter().reduce(|all, rect| all.union(&rect)).map(|all| all.union(own))
    }

    /// Whether an opening may be judged together with any other on its way through `swept`.
    pub(super) fn any_on_the_way(&self, swept: &Rect) -> bool {
        self.crowd_near(swept).is_some()
    }

    /// The rectangles in one piece of tile that an opening may be judged together with on its way through `swept`.
    pub(super) fn on_the_way(&self, tile: TileId, piece: Option<u16>, swept: &Rect) -> Vec<Rect> {
        let Some(crowd) = self.crowd_near(swept) else { return Vec::new() };
        self.grow(crowd, crowd.in_piece(tile, piece), swept)
    }

    /// Whether there is nothing to be judged together with.
    pub(super) fn is_none(&self) -> bool {
        self.crowd.is_none()
    }

    /// The crowd, if any of it is nearer than the web. Up to its margin a post comes near to no single opening but those it is
    /// near to already.
    fn crowd_near(&self, own: &Rect) -> Option<&Crowd<'_>> {
        self.crowd.filter(|crowd| {
            let near = flat(&own.grown(crowd.web - 1));
            self.near || crowd.joined.locate_in_envelope_intersecting(&near).next().is_some()
        })
    }

    /// What is nearer than the web to a rectangle, or to the union of it and what is, and so on.
    fn grow(&self, crowd: &Crowd, piece: Range<usize>, from: &Rect) -> Vec<Rect> {
        let mut all = *from;
        loop {
            let mut near = Vec::new();
            self.each_near(crowd, piece.clone(), &all, |rect| near.push(rect));
            let grown = near.iter().fold(all, |all, rect| all.union(rect));
            if grown == all {
                return near;
            }
            all = grown;
        }
    }

    fn each_near(&self, crowd: &Crowd, piece: Range<usize>, rect: &Rect, mut found: impl FnMut(Rect)) {
        let mut check = |other: Rect| {
            if rect.nearer_than(&other, crowd.web) {
                found(other);
            }
        };
        let of_post = &crowd.of_post[self.post];
        let own = of_post
            .get(of_post.partition_point(|&place| place < piece.start))
            .filter(|&place| piece.contains(place));
        if let Some(place) = own
            && let Some(without) = crowd.without.get(place)
            && let Ok(member) = crowd.cuts[*place].posts.binary_search(&self.post)
        {
            without[member].iter().copied().for_each(&mut check);
        }
        if piece.len() > FEW_CUTS {
            let near = in_piece(piece.start, &rect.grown(crowd.web));
            let found = crowd.crowded.locate_in_envelope_intersecting(&near).map(|found| found.data);
            found.filter(|place| Some(place) != own).for_each(|place| check(rect_of(&crowd.cuts[place])));
        } else {
            piece.filter(|place| Some(place) != own).for_each(|place| check(rect_of(&crowd.cuts[place])));
        }
    }
}

fn piece_of(cut: &SlopeCut) -> (TileId, Option<u16>) {
    (cut.judged.tile, cut.judged.footprint.number())
}

/// The bounds of what is judged as one.
fn rect_of(cut: &SlopeCut) -> Rect {
    let shape: &Shape = &cut.judged.shape;
    shape.bounds()
}

/// Grid steps are exact as `f64` within the limits (±4·10¹³ is below 2⁵³).
fn flat(rect: &Rect) -> AABB<[f64; 2]> {
    AABB::from_corners([rect.left as f64, rect.lower as f64], [rect.right as f64, rect.upper as f64])
}

fn in_piece(first: usize, rect: &Rect) -> AABB<[f64; 3]> {
    let (first, flat) = (first as f64, flat(rect));
    let ([left, lower], [right, upper]) = (flat.lower(), flat.upper());
    AABB::from_corners([first, left, lower], [first, right, upper])
}
