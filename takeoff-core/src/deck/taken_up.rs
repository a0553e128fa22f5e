//! Which tiles are handled: cut, taken up, loosened.
use schemars::JsonSchema;
use serde::Serialize;

use super::Perimeter;
use super::codes::SET_TILES_CANNOT_BE_LOOSENED;
use super::overlap::pieces_meeting;
use crate::cuts::{CutKind, Footprint, Shape, SlopeCut};
use crate::geometry::{Ellipse, Rect, clip};
use crate::model::{PostId, Problem};
use crate::roof::{Part, Site, TileId, TilePiece};

/// A tile handled, or one piece of a tile that the field's edge cuts into several.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// Which tile.
    pub tile: TileId,
    /// Which piece, where it falls into several.
    pub piece: Option<u16>,
    /// The first class that holds for it.
    pub class: TileClass,
    /// Whether a set tile (mortar, foam, adhesive) would have to be loosened: it can't be.
    pub excluded: bool,
    /// The posts on whose account, ascending, by their places in the slope's list.
    pub posts: Vec<usize>,
}

/// The tiles handled on a slope, by course, column, part and piece; what two posts share is there once.
///
/// `zones` and `openings` hold one entry a post.
///
/// # Rule
///
/// *Removed* is every tile whose clipped footprint meets a work zone, and every cut tile. *Loosened* is a tile
/// that is not removed and lies directly on a removed one: a higher course, the neighbour on its side strip, a
/// cover on its pan, always where the clipped interiors meet. Of the classes severed, cut, removed, loosened the
/// first that holds counts. A piece of an edge tile that lies wholly inside an opening is gone and is not counted.
///
/// # Example
///
/// Tiles 12 in to the joint with 1 in side lap, 16 1/2 in long, exposed 13 1/4 in, straight joints: a zone inside
/// one tile's face and clear of its laps removes that tile; on it lie the neighbour that covers its side strip
/// and, in the course above, three tiles (its own column, and one on each side by the laps).
pub fn taken_up(site: &Site, zones: &[Rect], openings: &[Ellipse], cuts: &[SlopeCut]) -> Vec<Taken> {
    let gone = swallowed(site, openings);
    let mut reasons = Vec::with_capacity(zones.len() * 12 + cuts.len());
    for (post, zone) in zones.iter().enumerate() {
        in_zone(site, zone, |tile, piece| {
            reasons.push(Reason { tile, piece, class: TileClass::Removed, post });
        });
    }
    for cut in cuts {
        let severed = cut.judged.kind() == CutKind::Severed;
        let class = if severed { TileClass::Severed } else { TileClass::Cut };
        let (tile, piece) = (cut.judged.tile, cut.judged.footprint.number());
        reasons.extend(cut.posts.iter().map(|&post| Reason { tile, piece, class, post }));
    }
    let is_gone = |reason: &Reason| gone.binary_search(&(reason.tile, reason.piece)).is_ok();
    reasons.retain(|reason| !is_gone(reason));
    let removed = gathered(reasons, false);

    let is_removed =
        |tile, piece| removed.binary_search_by_key(&(tile, piece), |taken| (taken.tile, taken.piece)).is_ok();
    let mut reasons = Vec::with_capacity(removed.len() * 2);
    for (taken, last_courses) in removed.iter().zip(last_courses(site, &removed)) {
        let last = last_courses.iter().copied().max().unwrap_or(0);
        lying_on(site, taken, last, |tile, piece| {
            if !is_removed(tile, piece) {
                let class = TileClass::Loosened;
                let posts = taken.posts.iter().zip(&last_courses).filter(|(_, last)| tile.course <= **last);
                reasons.extend(posts.map(|(&post, _)| Reason { tile, piece, class, post }));
            }
        });
    }
    reasons.retain(|reason| !is_gone(reason));
    let loosened = gathered(reasons, site.slope.tile.held.is_set());

    let mut all = removed;
    all.extend(loosened);
    all.sort_unstable_by_key(|taken| (taken.tile, taken.piece));
    all
}

/// What the takeoff says about the tiles handled.
pub fn tile_work(site: &Site, taken: &[Taken]) -> Vec<TileWork> {
    let strip = Perimeter::of(site.slope);
    taken
        .iter()
        .map(|taken| TileWork {
            tile: taken.tile,
            footprint: footprint_of(site, taken),
            class: taken.class,
            refasten: refastened(site, strip.as_ref(), taken),
            excluded: taken.excluded,
            posts: taken.posts.iter().copied().map(PostId::new).collect(),
            face: site.grid.face(taken.tile),
        })
        .collect()
}

/// Whether a tile is laid again where every tile is fastened: what is seen of it meets the strip along the edges.
pub fn refastened(site: &Site, strip: Option<&Perimeter>, taken: &Taken) -> bool {
    let Some(strip) = strip.filter(|_| taken.class != TileClass::Loosened) else { return false };
    strip.meets_any(&seen(&footprint_of(site, taken), &site.grid.face(taken.tile)))
}

/// How many tiles of a part are in a class; excluded ones are in none.
pub fn count(taken: &[Taken], part: Part, class: TileClass) -> u64 {
    let counted = |taken: &&Taken| taken.tile.part == part && taken.class == class && !taken.excluded;
    taken.iter().filter(counted).count() as u64
}

/// A finding where set tiles would have to be loosened; `path` is the slope's place in the job file.
pub fn set_tiles(site: &Site, taken: &[Taken], path: &str) -> Option<Problem> {
    let excluded = taken.iter().filter(|taken| taken.excluded).count();
    (excluded > 0).then(|| {
        let message = format!(
            "{excluded} tiles on `{}` are set in mortar, foam or adhesive and can't be loosened: they are excluded \
             from the takeoff",
            site.slope.name
        );
        let help = "break them out and order new ones, or agree with the roofer how they are freed";
        Problem::new(SET_TILES_CANNOT_BE_LOOSENED, message, help, path)
    })
}

/// One tile (or piece), handled on account of one post.
struct Reason {
    tile: TileId,
    piece: Option<u16>,
    class: TileClass,
    post: usize,
}

/// One entry a tile: its first class and all its posts.
fn gathered(mut reasons: Vec<Reason>, excluded: bool) -> Vec<Taken> {
    reasons.sort_unstable_by_key(|reason| (reason.tile, reason.piece, reason.post, reason.class));
    reasons
        .chunk_by(|a, b| (a.tile, a.piece) == (b.tile, b.piece))
        .filter_map(|of_tile| {
            let mut posts: Vec<usize> = of_tile.iter().map(|reason| reason.post).collect();
            posts.dedup();
            let class = of_tile.iter().map(|reason| reason.class).min()?;
            let Reason { tile, piece, .. } = of_tile[0];
            Some(Taken { tile, piece, class, excluded, posts })
        })
        .collect()
}

/// Calls `found` with every tile or piece whose clipped footprint meets a zone.
fn in_zone(site: &Site, zone: &Rect, mut found: impl FnMut(TileId, Option<u16>)) {
    let all_whole = site.field.covers(&site.grid.reach(zone));
    for (tile, rect) in site.grid.over(*zone) {
        if all_whole || site.field.covers(&rect) {
            found(tile, None);
            continue;
        }
        for piece in Footprint::pieces(&site.field, &rect) {
            if Shape::Rect(*zone).meets_polygon(&piece.polygon()) {
                found(tile, piece.number());
            }
        }
    }
}

/// Of each removed tile and each of its posts, the last course in which to look for tiles on it.
///
/// The next tile straight above that is removed for the same post, if it is whole or one piece, lies under all that lies on the
/// lower one in the courses beyond it: whatever of a higher tile meets the lower one also meets it. So long tiles laid at a small
/// exposure are looked at once each and not once for each tile below.
fn last_courses(site: &Site, removed: &[Taken]) -> Vec<Vec<u32>> {
    let mut last: Vec<Vec<u32>> = removed.iter().map(|taken| vec![u32::MAX; taken.posts.len()]).collect();
    let mut stacks: Vec<(i64, Part, usize, u32, usize, usize)> = Vec::new();
    for (i, taken) in removed.iter().enumerate() {
        let TileId { course, part, .. } = taken.tile;
        let left = site.grid.footprint(taken.tile).left;
        stacks.extend(taken.posts.iter().zip(0..).map(|(&post, j)| (left, part, post, course, i, j)));
    }
    stacks.sort_unstable();
    for stack in stacks.chunk_by(|a, b| (a.0, a.1, a.2) == (b.0, b.1, b.2)) {
        let mut next_whole = u32::MAX;
        for of_course in stack.chunk_by(|a, b| a.3 == b.3).rev() {
            for &(.., i, j) in of_course {
                last[i][j] = next_whole;
            }
            if let [(.., course, i, _)] = *of_course
                && removed[i].piece.is_none()
            {
                next_whole = course;
            }
        }
    }
    last
}

/// Calls `found` with every tile or piece that lies directly on a tile or piece, up to the course `last`.
fn lying_on(site: &Site, taken: &Taken, last: u32, mut found: impl FnMut(TileId, Option<u16>)) {
    let own = site.grid.footprint(taken.tile);
    let all_whole = site.field.covers(&site.grid.reach(&own));
    let own_whole = all_whole || site.field.covers(&own);
    for (tile, rect) in site.grid.lying_on(taken.tile).take_while(|(tile, _)| tile.course <= last) {
        if all_whole || (own_whole && site.field.covers(&rect)) {
            found(tile, None);
            continue;
        }
        for piece in pieces_meeting(&site.field, &own, taken.piece, &rect) {
            found(tile, piece);
        }
    }
}

/// The pieces of edge tiles that lie wholly inside an opening, ascending.
fn swallowed(site: &Site, openings: &[Ellipse]) -> Vec<(TileId, Option<u16>)> {
    let mut gone = Vec::new();
    for opening in openings {
        // A piece inside the opening lies at an edge of the field inside the opening.
        if site.field.covers(&opening.bounds()) {
            continue;
        }
        for (tile, rect) in site.grid.over(opening.bounds()) {
            let pieces = Footprint::pieces(&site.field, &rect);
            let inside = pieces.iter().filter(|piece| match piece {
                Footprint::Whole(_) => false,
                Footprint::Edge { polygon, .. } => Shape::Ellipse(*opening).covers(polygon),
            });
            gone.extend(inside.map(|piece| (tile, piece.number())));
        }
    }
    gone.sort_unstable();
    gone
}

fn footprint_of(site: &Site, taken: &Taken) -> Footprint {
    let rect = site.grid.footprint(taken.tile);
    let pieces = Footprint::pieces(&site.field, &rect);
    pieces.into_iter().find(|piece| piece.number() == taken.piece).unwrap_or(Footprint::Whole(rect))
}

/// What is seen of a footprint: the part of it inside the tile's visible face.
fn seen(footprint: &Footprint, face: &Rect) -> Vec<crate::geometry::Polygon> {
    clip(&footprint.polygon(), face)
}

/// What becomes of a tile: the first that holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TileClass {
    /// Made up from new tiles.
    Severed,
    /// Taken up, cut and laid back.
    Cut,
    /// Taken up and laid back.
    Removed,
    /// Loosened in place.
    Loosened,
}

/// A tile handled, or one piece of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TileWork {
    /// Which tile.
    pub tile: TileId,
    /// As it lies in the field.
    pub footprint: Footprint,
    /// What becomes of it.
    pub class: TileClass,
    /// Whether it lies in the perimeter strip and is refastened.
    pub refasten: bool,
    /// A set tile that would have to be loosened and can't be: excluded from the takeoff.
    pub excluded: bool,
    /// The posts on whose account it is handled.
    pub posts: Vec<PostId>,
    /// Its visible face before the field's edge clips it.
    pub face: Rect,
}

impl TileWork {
    /// Which tile, and which piece of it.
    pub fn which(&self) -> TilePiece {
        TilePiece { tile: self.tile, piece: self.footprint.number() }
    }
}
