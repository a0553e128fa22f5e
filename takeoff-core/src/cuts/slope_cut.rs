//! All cuts of a slope.
use smallvec::{SmallVec, smallvec};

use crate::geometry::{Ellipse, grid};
use crate::slope::Site;

use super::{Judged, Shape, judge, judge_together};

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
    let web = grid(site.practice.least_web);
    let mut alone: Vec<SlopeCut> = Vec::with_capacity(openings.len() * 5 / 2);
    for (post, opening) in openings.iter().enumerate() {
        judge(&site.grid, &site.field, Shape::Ellipse(*opening), web, |judged| {
            alone.push(SlopeCut { judged, posts: smallvec![post] });
        });
    }
    alone.sort_by_cached_key(|cut| (cut.judged.tile, cut.judged.footprint.number()));
    if !alone.windows(2).any(|pair| same_piece(&pair[0], &pair[1])) {
        return alone;
    }
    let mut cuts = Vec::with_capacity(alone.len());
    for of_piece in alone.chunk_by(same_piece) {
        match of_piece {
            [only] => cuts.push(only.clone()),
            several => joined(several, openings, web, &mut cuts),
        }
    }
    cuts
}

fn same_piece(a: &SlopeCut, b: &SlopeCut) -> bool {
    a.judged.tile == b.judged.tile && a.judged.footprint.number() == b.judged.footprint.number()
}

/// The cuts in one piece of tile, near openings judged as one.
fn joined(of_piece: &[SlopeCut], openings: &[Ellipse], web: i64, cuts: &mut Vec<SlopeCut>) {
    let posts: Vec<usize> = of_piece.iter().map(|cut| cut.posts[0]).collect();
    let shapes: Vec<Ellipse> = posts.iter().map(|&post| openings[post]).collect();
    for (members, shape) in judge_together(&shapes, web) {
        let footprint = of_piece[0].judged.footprint.clone();
        let breach = footprint.breach(&shape, web);
        let judged = Judged { tile: of_piece[0].judged.tile, footprint, shape, breach };
        cuts.push(SlopeCut { judged, posts: members.into_iter().map(|i| posts[i]).collect() });
    }
}
