//! Which tiles an opening cuts, and how.
use std::collections::BTreeMap;

use super::breach::side_of;
use super::{Breach, CutKind, Merged, Shape, TileSide};
use crate::geometry::{Ellipse, Polygon, Rect, Segment, grid as steps};
use crate::roof::{Field, TileGrid, TileId};
use crate::units::Length;

/// A tile's footprint as it lies in the field, or one piece of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Footprint {
    /// The whole tile.
    Whole(Rect),
    /// Cut by the field's edge; one of several pieces where the number is not `None`.
    Edge {
        /// What is left of the tile.
        polygon: Polygon,
        /// Which piece, counted from 0, where the tile falls into several.
        number: Option<u16>,
    },
}

impl Footprint {
    /// The footprint of a tile in a field, piece by piece.
    pub fn pieces(field: &Field, tile: &Rect) -> Vec<Footprint> {
        if field.covers(tile) {
            return vec![Footprint::Whole(*tile)];
        }
        let pieces = field.pieces_of(tile);
        let several = pieces.len() > 1;
        let numbered = pieces.into_iter().enumerate();
        numbered
            .map(|(i, polygon)| Footprint::Edge { polygon, number: several.then_some(i as u16) })
            .collect()
    }

    /// Whether an opening's interior meets it.
    pub fn meets(&self, shape: &Shape) -> bool {
        match self {
            Footprint::Whole(rect) => shape.meets_rect(rect),
            Footprint::Edge { polygon, .. } => shape.meets_polygon(polygon) && !shape.covers(polygon),
        }
    }

    /// What an opening breaches of it.
    pub fn breach(&self, shape: &Shape, web: i64) -> Breach {
        let grown = shape.grown(web);
        match self {
            Footprint::Whole(rect) => Breach::of_whole(&grown, rect),
            Footprint::Edge { polygon, .. } => Breach::of_piece(&grown, polygon),
        }
    }

    /// An edge by its place in the boundary.
    pub fn edge(&self, place: u16) -> Option<Segment> {
        match self {
            Footprint::Whole(rect) => {
                let (corners, i) = (rect.corners(), usize::from(place));
                Some(Segment { from: *corners.get(i)?, to: corners[(i + 1) % 4] })
            }
            Footprint::Edge { polygon, .. } => polygon.edges().nth(usize::from(place)),
        }
    }

    /// Which piece, where the tile falls into several.
    pub fn number(&self) -> Option<u16> {
        match self {
            Footprint::Whole(_) => None,
            Footprint::Edge { number, .. } => *number,
        }
    }

    /// As a polygon.
    pub fn polygon(&self) -> Polygon {
        match self {
            Footprint::Whole(rect) => Polygon::new(vec![rect.corners().to_vec()]),
            Footprint::Edge { polygon, .. } => polygon.clone(),
        }
    }
}

/// One tile and what an opening does to it.
#[derive(Clone, Debug)]
pub struct Judged {
    /// Which tile.
    pub tile: TileId,
    /// Its footprint, or the piece of it that is cut.
    pub footprint: Footprint,
    /// The opening as judged: the post's own, or the rectangle round several.
    pub shape: Shape,
    /// What it breaches.
    pub breach: Breach,
}

impl Judged {
    /// The kind of cut.
    pub fn kind(&self) -> CutKind {
        self.breach.kind()
    }

    /// The edges that the cut runs out of.
    pub fn open_edges(&self) -> impl Iterator<Item = Segment> {
        self.breach.open_edges().filter_map(|place| self.footprint.edge(place))
    }

    /// The sides of the whole tile that the cut runs out of.
    pub fn open_to(&self, tile: &Rect) -> Vec<TileSide> {
        let mut sides: Vec<TileSide> = self.open_edges().map(|edge| side_of(edge, tile)).collect();
        sides.sort_unstable();
        sides
    }
}

/// Calls `found` with every tile (or piece) that `shape` cuts, by course, column, part and piece.
///
/// All layers count: in a head lap the upper tile's nose and the lower tile's head, in a side lap both
/// neighbours.
pub fn each_met(grid: &TileGrid, field: &Field, shape: &Shape, mut found: impl FnMut(TileId, Footprint)) {
    let bounds = shape.bounds();
    // Where the field covers every tile that could be met, none of them needs clipping.
    let all_whole = field.covers(&grid.reach(&bounds));
    for (tile, rect) in grid.over(bounds) {
        if all_whole {
            if shape.meets_rect(&rect) {
                found(tile, Footprint::Whole(rect));
            }
            continue;
        }
        for footprint in Footprint::pieces(field, &rect) {
            if footprint.meets(shape) {
                found(tile, footprint);
            }
        }
    }
}

/// Calls `found` with every tile (or piece) that `shape` cuts, and what it breaches of it.
pub fn judge(grid: &TileGrid, field: &Field, shape: Shape, web: i64, mut found: impl FnMut(Judged)) {
    each_met(grid, field, &shape, |tile, footprint| {
        let breach = footprint.breach(&shape, web);
        found(Judged { tile, footprint, shape, breach });
    });
}

/// Every tile that one opening cuts, by course, column, part and piece.
///
/// `least_web` is the narrowest strip of tile that does not snap.
#[must_use]
pub fn cut(grid: &TileGrid, field: &Field, opening: Ellipse, least_web: Length) -> Vec<Judged> {
    let mut cuts = Vec::new();
    judge(grid, field, Shape::Ellipse(opening), steps(least_web), |judged| cuts.push(judged));
    cuts
}

/// What several openings do to one piece of tile: those whose bounding rectangles are nearer than the web in
/// both `u` and `v` are judged as one opening, the bounding rectangle of both, and so on ([`Merged`]).
///
/// Gives each group's members (ascending indices into `openings`) and shape, in the order of their first members.
pub fn judge_together(openings: &[Ellipse], web: i64) -> Vec<(Vec<usize>, Shape)> {
    let merged = Merged::new(openings.iter().map(Ellipse::bounds), web);
    let mut members: BTreeMap<Rect, Vec<usize>> = BTreeMap::new();
    for (i, opening) in openings.iter().enumerate() {
        let around = merged.around(opening.centre).unwrap_or(opening.bounds());
        members.entry(around).or_default().push(i);
    }
    let mut groups: Vec<(Rect, Vec<usize>)> = members.into_iter().collect();
    groups.sort_unstable_by_key(|(_, members)| members.first().copied());
    groups
        .into_iter()
        .map(|(rect, members)| match members[..] {
            [only] => (members, Shape::Ellipse(openings[only])),
            _ => (members, Shape::Rect(rect)),
        })
        .collect()
}
