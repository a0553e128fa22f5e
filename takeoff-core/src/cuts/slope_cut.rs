//! All cuts of a slope.
use smallvec::{SmallVec, smallvec};

use super::{Footprint, Judged, Shape, each_met, judge_together};
use crate::geometry::{Ellipse, grid};
use crate::roof::{Site, TileId};

/// One cut in one tile, and the posts it is for.
#[derive(Clone, Debug)]
pub struct SlopeCut {
    /// The tile and what happens to it.
    pub judged: Judged,
    /// The posts, by their place in the slope's list; several when their openings are judged as one.
    pub posts: SmallVec<[usize; 2]>,
}

/// All cuts of a slope, by course, column, part, piece and first post.
///
/// `openings` holds one opening a post. Openings in one tile that are nearer than the least sound web are judged
/// together.
pub fn cuts_of(site: &Site, openings: &[Ellipse]) -> Vec<SlopeCut> {
    let mut cuts = Vec::new();
    each_cut(site, openings, |cut| cuts.push(cut));
    cuts
}

/// The cuts of each post, as ascending places in the list of a slope's cuts.
pub fn cuts_of_each(cuts: &[SlopeCut], posts: usize) -> Vec<Vec<usize>> {
    let mut of_each = vec![Vec::new(); posts];
    for (place, cut) in cuts.iter().enumerate() {
        cut.posts.iter().for_each(|&post| of_each[post].push(place));
    }
    of_each
}

/// Calls `found` with each cut of a slope, in the order of [`cuts_of`]: for a field so large that the cuts are not
/// wanted all at once.
pub fn each_cut(site: &Site, openings: &[Ellipse], mut found: impl FnMut(SlopeCut)) {
    let web = grid(site.practice.least_web);
    let mut met: Vec<Met> = Vec::with_capacity(openings.len() * 2);
    for (post, opening) in openings.iter().enumerate() {
        each_met(&site.grid, &site.field, &Shape::Ellipse(*opening), |tile, footprint| {
            let edge = matches!(footprint, Footprint::Edge { .. }).then(|| Box::new(footprint));
            met.push(Met { tile, edge, post });
        });
    }
    met.sort_unstable_by_key(|met| (met.tile, met.piece(), met.post));
    for of_piece in met.chunk_by(|a, b| a.tile == b.tile && a.piece() == b.piece()) {
        let footprint = || of_piece[0].footprint(site);
        match of_piece {
            [only] => {
                let shape = Shape::Ellipse(openings[only.post]);
                found(cut(only.tile, footprint(), shape, web, smallvec![only.post]));
            }
            several => {
                let shapes: Vec<Ellipse> = several.iter().map(|met| openings[met.post]).collect();
                for (members, shape) in judge_together(&shapes, web) {
                    let posts = members.into_iter().map(|member| several[member].post).collect();
                    found(cut(several[0].tile, footprint(), shape, web, posts));
                }
            }
        }
    }
}

fn cut(tile: TileId, footprint: Footprint, shape: Shape, web: i64, posts: SmallVec<[usize; 2]>) -> SlopeCut {
    let breach = footprint.breach(&shape, web);
    SlopeCut { judged: Judged { tile, footprint, shape, breach }, posts }
}

/// A tile met by a post's opening: as little as can be sorted fast.
struct Met {
    tile: TileId,
    /// Its footprint, where the field's edge cuts it.
    edge: Option<Box<Footprint>>,
    post: usize,
}

impl Met {
    fn piece(&self) -> Option<u16> {
        self.edge.as_ref().and_then(|footprint| footprint.number())
    }

    fn footprint(&self, site: &Site) -> Footprint {
        match &self.edge {
            Some(footprint) => (**footprint).clone(),
            None => Footprint::Whole(site.grid.footprint(self.tile)),
        }
    }
}
