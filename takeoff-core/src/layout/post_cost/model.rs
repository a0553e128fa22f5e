//! The work that one post makes, as if it stood alone on its slope, and what that costs.
use std::sync::Arc;

use smallvec::SmallVec;

use super::handled_tiles::{ClassCounts, CutTile, HandledTiles, TileCounter};
use super::rates::Rates;
use crate::cuts::{CutKind, Opening, Shape, judge, opening_of};
use crate::deck::{
    Method, TopFlashingCheck, battens_cut, deck_area, height_stack, own_patch, pieces_of_sheet, work_zone,
};
use crate::geometry::{Point, Polygon, Rect, SlopePoint, grid, half, to_mm};
use crate::layout::graduations::Graduations;
use crate::layout::objective::{MILLION, Objective};
use crate::model::{Assembly, Job, Post};
use crate::relocation::{Mover, Situation, State, Tally};
use crate::roof::Site;
use crate::units::Length;

/// A post of one assembly that may stand anywhere on a slope.
pub(crate) struct PostCostModel<'a> {
    pub(crate) site: &'a Site<'a>,
    pub(crate) mover: Mover<'a>,
    pub(crate) rates: Rates,
    pub(crate) graduations: Graduations,
    assembly: Arc<Assembly>,
    counter: TileCounter,
    /// What a failing post costs; `None` where it is kept from failing at any price.
    cost_of_failing: Option<f64>,
}

/// The work at a place: all that the post's cost, besides the height of its patch, and its margin depend on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct PostWork {
    pub(crate) state: State,
    /// Whether its cone or its top ends below the tile.
    too_low: bool,
    /// Tiles cut with a hole; cut otherwise, severed ones aside.
    holes: u32,
    notches: u32,
    handled: HandledTiles,
    /// Pieces of batten reset.
    battens: u32,
    /// The patch, where there is one.
    pub(crate) patch: Option<PatchExtent>,
}

/// A patch, by what does not change as its lower edge moves with the post.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct PatchExtent {
    /// Its upper edge; `None` where it runs up to the field's edge, which on a crooked rafter is now here, now there.
    upper: Option<i64>,
    /// In how many pieces it is laid.
    pieces: u64,
}

impl<'a> PostCostModel<'a> {
    pub(crate) fn new(job: &Job, site: &'a Site<'a>, assembly: &'a Arc<Assembly>) -> PostCostModel<'a> {
        let opening: Opening = opening_of(assembly, site.slope);
        PostCostModel {
            site,
            mover: Mover { site, assembly, opening, partners: Vec::new() },
            rates: Rates::of(job, site.slope, assembly),
            graduations: Graduations::of(job.display),
            assembly: assembly.clone(),
            counter: TileCounter::of(site),
            cost_of_failing: job.practice.cost_of_failing.map(|cost| cost.to_f64()),
        }
    }

    /// The work of the post at a place.
    pub(crate) fn work(&self, at: Point) -> PostWork {
        let site = self.site;
        let [u, v] = [at.u, at.v].map(|steps| Length::from_nm(steps / 2));
        let post = Post {
            name: String::new(),
            assembly: self.assembly.clone(),
            at: SlopePoint { u, v },
            fixed: false,
            path: String::new(),
        };
        let opening = self.mover.opening_at(at);
        let method = Method::at(site, &self.assembly, at);
        let mut tally = Tally::default();
        let mut met: SmallVec<[CutTile; 8]> = SmallVec::new();
        let web = grid(site.practice.least_web);
        judge(&site.grid, &site.field, Shape::Ellipse(opening), web, |judged| {
            tally.add(judged.tile, judged.kind());
            met.push((judged.tile, judged.kind()));
        });
        let handled = self.counter.handled(site, &work_zone(site, &post, &method), &opening, &met);
        let of_kind = |kinds: &[CutKind]| met.iter().filter(|(_, kind)| kinds.contains(kind)).count() as u32;
        let stack = height_stack(site, &post, &opening);
        let ends_below = |top_mm: Option<f64>| top_mm.is_some_and(|top_mm| top_mm <= stack.tile_mm);
        let patch = own_patch(site, &post, &method).map(|patch| {
            let pieces = pieces_of_sheet(patch.upper - patch.lower, &site.slope.underlayment);
            let to_edge = matches!(method, Method::PatchedToEdge { .. });
            PatchExtent { upper: (!to_edge).then_some(patch.upper), pieces }
        });
        PostWork {
            state: State::of(&tally, method.kind(), &TopFlashingCheck::at(site, &self.assembly, &opening)),
            too_low: ends_below(stack.cone_mm) || ends_below(stack.post_mm),
            holes: of_kind(&[CutKind::Hole]),
            notches: of_kind(&[CutKind::Notch, CutKind::Corner]),
            handled,
            battens: battens_cut(site, &deck_area(site, &post, &method)) as u32,
            patch,
        }
    }

    /// What the work costs besides the felt and staples of its patch.
    pub(crate) fn base(&self, work: &PostWork) -> Objective {
        let rates = &self.rates;
        let mut cost = rates.post
            + f64::from(work.holes) * rates.hole
            + f64::from(work.notches) * rates.notch
            + work.handled.fasteners as f64 * rates.fastener
            + f64::from(work.battens) * rates.batten;
        for (classes, tile) in work.handled.classes.iter().zip(&rates.tiles) {
            let ClassCounts { severed, cut, removed, loosened } = *classes;
            cost += f64::from(severed) * tile.severed
                + f64::from(cut) * tile.cut
                + f64::from(removed) * tile.removed
                + f64::from(loosened) * (tile.loosened + rates.loosen)
                + f64::from(severed + cut + removed) * rates.lift;
        }
        if work.patch.is_some() {
            cost += rates.patch;
        }
        let mut failing = 0;
        if work.fails() {
            match self.cost_of_failing {
                Some(own) => cost += own,
                None => failing = 1,
            }
        }
        Objective { failing, narrow: 0, money: rounded(cost) }
    }

    /// What the felt and the staples of a patch cost with the post at a place.
    ///
    /// # Formula
    ///
    /// `width · (height + (pieces − 1)·b) · felt + 2 (width + height) · staples`, `b` the sheet's head lap: linear in
    /// `v`, and falling.
    pub(crate) fn patch_cost(&self, sheet: &PatchExtent, at: Point) -> i64 {
        let practice = self.site.practice;
        let margin = practice.patch_side_margin;
        let width = (self.assembly.deck_flashing.width + margin + margin).mm();
        let laps = (sheet.pieces - 1) as f64 * self.site.slope.underlayment.head_lap.mm();
        let upper = sheet.upper.unwrap_or_else(|| self.site.field.edge_above(at));
        let height = to_mm(upper - at.v);
        let Rates { felt, staples, .. } = &self.rates;
        rounded(width * (height + laps) * felt + 2.0 * (width + height) * staples)
    }

    /// A name for all `u` where the work is the same from `low` to `high`: no edge is near, or only those of a rectangle
    /// above and below, so that only the place within a column counts. `None` where there is none.
    pub(crate) fn alike(&self, u: i64, low: i64, high: i64) -> Option<i64> {
        let (flashing, practice, site) = (&self.assembly.deck_flashing, self.site.practice, self.site);
        let hand =
            grid(practice.hand_clearance + practice.patch_side_margin + practice.three_course.mesh_width);
        let aside = half(flashing.width) + hand;
        // Spans are looked for that far beyond both ends.
        let beyond = practice.least_margin + practice.least_margin;
        let line = site.laps.lowest_from(high + grid(flashing.up + beyond));
        let opening = self.mover.opening_at(Point::new(u, high + grid(beyond))).bounds();
        let upper = line.map_or(high, |line| line + grid(practice.patch_underlap)).max(opening.upper) + hand;
        let lower = low - grid(flashing.down + beyond) - hand;
        let aside = aside.max(opening.right - u);
        // The tiles that are met, and those on them.
        let swept = site.grid.reach(&site.grid.reach(&Rect::new(u - aside, lower, u + aside, upper)));
        let bounds = site.field.bounds();
        let inside = if site.field.is_rectangle() {
            bounds.left <= swept.left && swept.right <= bounds.right
        } else {
            line.is_some() && site.field.covers(&swept)
        };
        let rect = || Polygon::new(vec![swept.corners().to_vec()]);
        let at_strip = || self.counter.strip(site).is_some_and(|strip| strip.meets_any(&[rect()]));
        (inside && !at_strip()).then(|| (u - site.grid.joint(0, 0)).rem_euclid(site.grid.cover()))
    }

    /// What a blocking board of a length costs.
    pub(crate) fn board(&self, length: Length) -> i64 {
        rounded(self.rates.board + length.mm() * self.rates.board_mm)
    }
}

impl PostWork {
    /// Whether a post may stand there at all: there is tile.
    pub(crate) fn is_possible(&self) -> bool {
        self.state.situation != Situation::None
    }

    /// Whether a tile is severed, or a check of the tile flashing or of the heights fails.
    pub(crate) fn fails(&self) -> bool {
        self.state.severed > 0 || !self.state.passes() || self.too_low
    }
}

/// In whole millionths.
fn rounded(cost: f64) -> i64 {
    (cost * MILLION).round() as i64
}
