//! All cuts of a slope.
use crate::geometry::Ellipse;
use crate::slope::Site;

use super::{Judged, Shape, judge, judge_together};

/// One cut in one tile, and the posts it is for.
#[derive(Clone, Debug)]
pub struct SlopeCut {
    /// The tile and what happens to it.
    pub judged: Judged,
    /// The posts, by their place in the slope's list; several when their openings are judged as one.
    pub posts: Vec<usize>,
}

/// All cuts of a slope, by course, column, part, piece and first post.
///
/// `openings` holds one opening a post. Openings in one tile that are nearer than the least sound web are judged
/// together.
pub fn cuts_of(site: &Site, openings: &[Ellipse]) -> Vec<SlopeCut> {
    let web = crate::geometry::grid(site.practice.least_web);
    let mut alone: Vec<SlopeCut> = Vec::with_capacity(openings.len() * 2);
    for (post, opening) in openings.iter().enumerate() {
        judge(&site.grid, &site.field, Shape::Ellipse(*opening), web, |judged| {
            alone.push(SlopeCut { judged, posts: vec![post] });
        });
    }
    alone.sort_by_key(|cut| (cut.judged.tile, cut.judged.footprint.number(), cut.posts[0]));
    if !alone.windows(2).any(|pair| same_piece(&pair[0], &pair[1])) {
        return alone;
    }
    let mut cuts = Vec::with_capacity(alone.len());
    for of_piece in alone.chunk_by(same_piece) {
        joined(of_piece, openings, web, &mut cuts);
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
