//! Cost of a post as a function of its place.
use std::sync::Arc;

use smallvec::SmallVec;

use super::handled_tiles::{ClassCounts, CutTile, TileCounter};
use super::rates::Rates;
use super::work::{PatchExtent, PostWork};
use crate::cuts::{CutKind, Opening, Shape, judge, opening_of};
use crate::deck::{
    Method, TopFlashingCheck, battens_cut, deck_area, height_stack, own_patch, pieces_of_sheet, work_zone,
};
use crate::geometry::{Point, SlopePoint, grid, to_mm};
use crate::layout::graduations::Graduations;
use crate::layout::objective::{Objective, millionths};
use crate::model::{Assembly, Job, Post};
use crate::relocation::{Mover, Partners, State, Tally};
use crate::roof::Site;
use crate::units::Length;

/// The cost of a post of one assembly anywhere on one slope, as if it were alone there.
pub(crate) struct PostCostModel<'a> {
    pub(crate) site: &'a Site<'a>,
    pub(crate) mover: Mover<'a>,
    pub(crate) graduations: Graduations,
    pub(super) assembly: Arc<Assembly>,
    pub(super) counter: TileCounter,
    rates: Rates,
    /// Price that the job puts on a failing post; `None` ranks failing posts before all money.
    cost_of_failing: Option<f64>,
}

impl<'a> PostCostModel<'a> {
    pub(crate) fn new(job: &Job, site: &'a Site<'a>, assembly: &'a Arc<Assembly>) -> PostCostModel<'a> {
        let opening: Opening = opening_of(assembly, site.slope);
        PostCostModel {
            site,
            mover: Mover { site, assembly, opening, partners: Partners::default() },
            graduations: Graduations::new(job.display),
            assembly: assembly.clone(),
            counter: TileCounter::new(site),
            rates: Rates::new(job, site.slope, assembly),
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
        let mut cut: SmallVec<[CutTile; 8]> = SmallVec::new();
        let web = grid(site.practice.least_web);
        judge(&site.grid, &site.field, Shape::Ellipse(opening), web, |judged| {
            tally.add(judged.tile, judged.kind());
            cut.push((judged.tile, judged.kind()));
        });
        let handled = self.counter.count(site, &work_zone(site, &post, &method), &opening, &cut);
        let cut_as = |kinds: &[CutKind]| cut.iter().filter(|(_, kind)| kinds.contains(kind)).count() as u32;
        let stack = height_stack(site, &post, &opening);
        let ends_below = |top: Option<Length>| top.is_some_and(|top| top <= stack.tile);
        let patch = own_patch(site, &post, &method).map(|patch| {
            let pieces = pieces_of_sheet(patch.upper - patch.lower, &site.slope.underlayment);
            let to_edge = matches!(method, Method::PatchedToEdge { .. });
            PatchExtent { upper: (!to_edge).then_some(patch.upper), pieces }
        });
        PostWork {
            state: State::of(&tally, method.kind(), &TopFlashingCheck::at(site, &self.assembly, &opening)),
            too_low: ends_below(stack.cone) || ends_below(stack.post),
            holes: cut_as(&[CutKind::Hole]),
            notches: cut_as(&[CutKind::Notch, CutKind::Corner]),
            handled,
            battens: battens_cut(site, &deck_area(site, &post, &method)) as u32,
            patch,
        }
    }

    /// The objective of the work, the felt and staples of its patch excepted: constant within an interval.
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
                Some(price) => cost += price,
                None => failing = 1,
            }
        }
        Objective { failing, ..Objective::from_money(millionths(cost)) }
    }

    /// Cost of the felt and staples of a patch with the post at a place, in millionths of the currency.
    ///
    /// # Formula
    ///
    /// `width · (height + (pieces − 1) · b) · felt + 2 (width + height) · staples`, with `b` the sheet's head lap, `felt`
    /// per mm² and `staples` per mm. It is linear in `v`, and falls as the post moves up toward the upper edge.
    ///
    /// # Example
    ///
    /// 18 × 33 in in one piece, felt at 0.40 a square foot, staples at 0.02 each 4 in apart:
    /// 4.125 · 0.40 + 102 / 4 · 0.02 = 2.16.
    pub(crate) fn patch_cost(&self, patch: &PatchExtent, at: Point) -> i64 {
        let practice = self.site.practice;
        let margin = practice.patch_side_margin;
        let width = (self.assembly.deck_flashing.width + margin + margin).mm();
        let laps = (patch.pieces - 1) as f64 * self.site.slope.underlayment.head_lap.mm();
        let upper = patch.upper.unwrap_or_else(|| self.site.field.edge_above(at));
        let height = to_mm(upper - at.v);
        let Rates { felt, staples, .. } = &self.rates;
        millionths(width * (height + laps) * felt + 2.0 * (width + height) * staples)
    }

    /// Whether the height of a patch has no price, so that its cost is the same at all heights.
    pub(crate) fn patches_cost_nothing(&self) -> bool {
        self.rates.felt + self.rates.staples == 0.0
    }

    /// Cost of the work and its patch at a place, in millionths of the currency.
    pub(crate) fn money(&self, work: &PostWork, at: Point) -> i64 {
        let patch = work.patch.map_or(0, |patch| self.patch_cost(&patch, at));
        self.base(work).plus_money(patch).money
    }

    /// Cost of a blocking board of a length, in millionths of the currency.
    pub(crate) fn board_cost(&self, length: Length) -> i64 {
        millionths(self.rates.board + length.mm() * self.rates.board_mm)
    }
}
