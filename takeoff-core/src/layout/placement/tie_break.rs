//! The choice among shifts of equal objective, and the final heights.
use super::band::RailBand;
use super::{Placement, RailPlacement};
use crate::geometry::Point;
use crate::layout::bisection::greatest;
use crate::layout::graduations::Graduations;
use crate::layout::rail::{CandidatePost, Rail, least_objective};
use crate::layout::search::{EvaluatedShift, Search};

/// Shifts up the slope, lowest and highest, and the margin beyond the least one that they all allow.
struct WidestMargin {
    spare: i64,
    lowest: i64,
    highest: i64,
}

impl Search<'_> {
    /// The placement of the largest margin among shifts of equal objective, then the lowest. Each rail goes to the middle
    /// of its band as far as its window allows, to a tape graduation where one is free.
    pub(crate) fn place_best(
        &mut self,
        equals: &[EvaluatedShift],
        graduations: Graduations,
    ) -> Option<Placement> {
        let own = Point::from(self.array.at);
        let mut best: Option<Placement> = None;
        for shift in equals {
            let Some(placement) = self.place(shift, graduations) else { continue };
            let key = |placement: &Placement| {
                let heights: Vec<i64> = placement.rails.iter().map(|rail| rail.v).collect();
                let moved = [placement.at.v - own.v, placement.at.u - own.u].map(i64::abs);
                (-placement.spare_margin, heights, moved, placement.at.u)
            };
            if best.as_ref().is_none_or(|best| key(&placement) < key(best)) {
                best = Some(placement);
            }
        }
        best
    }

    fn place(&mut self, shift: &EvaluatedShift, graduations: Graduations) -> Option<Placement> {
        let mut bands = Vec::with_capacity(self.rails.len());
        for rail in 0..self.rails.len() {
            bands.push(self.widest_band(rail, shift)?);
        }
        let WidestMargin { spare, lowest, highest } = self.widest_margin(&bands, shift.up);
        let origin = Point::from(self.array.at).v;
        // The array moves no further than it must.
        let up = graduations.nearest(origin, origin + lowest, origin + highest) - origin;
        let rails = bands.iter().zip(&self.rails).map(|(band, rail)| {
            let v = if band.is_free() {
                let (low, high) = (band.from.max(rail.from + up), band.to.min(rail.to + up));
                graduations.nearest((band.from + band.to) / 2, low, high)
            } else {
                band.v
            };
            rail_placement(rail, band, v)
        });
        let rails: Vec<RailPlacement> = rails.collect();
        let objective = rails.iter().map(|rail| rail.objective).sum();
        let left = self.nearest_left(&rails, shift.left, graduations);
        Some(Placement { objective, at: Point::new(left, origin + up), rails, spare_margin: spare })
    }

    /// The widest band of a rail over its heights of the least objective.
    fn widest_band(&mut self, rail: usize, shift: &EvaluatedShift) -> Option<RailBand> {
        let mut widest: Option<RailBand> = None;
        for &v in &shift.heights[rail] {
            let paths = self.paths_at(shift.stagger_phase, rail, v);
            let owner = &self.rails[rail];
            let least = least_objective(owner, &paths, shift.left, self.length, v);
            let mut cheapest = paths.iter().filter(|path| Some(path.objective) == least);
            let Some(path) =
                cheapest.find(|path| owner.carries(path.first, path.last, shift.left, self.length, v))
            else {
                continue;
            };
            let posts = owner.posts_of(path, &owner.candidates_at(v, shift.stagger_phase), v);
            let band = RailBand::new(owner, v, posts, shift.left, self.length);
            if widest.as_ref().is_none_or(|widest| band.half() > widest.half()) {
                widest = Some(band);
            }
        }
        widest
    }

    /// The largest margin that all free rails can have together, beyond the least one, and the shifts up that allow it.
    ///
    /// # Rule
    ///
    /// With a margin `t` a rail is in `[from + t, to − t]` of its band and in its window, which moves with the array. Each
    /// `t` leaves a range of shifts; bisection finds the largest `t` whose range is not empty.
    fn widest_margin(&self, bands: &[RailBand], up: i64) -> WidestMargin {
        let range = |margin: i64| {
            let ends = bands.iter().zip(&self.rails).map(|(band, rail)| {
                let margin = if band.is_free() { margin } else { 0 };
                (band.from + margin - rail.to, band.to - margin - rail.from)
            });
            let (low, high) = ends.fold(self.up, |(low, high), (from, to)| (low.max(from), high.min(to)));
            let fits = bands.iter().all(|band| !band.is_free() || band.half() >= margin);
            (fits && low <= high).then_some((low, high))
        };
        let most = bands.iter().filter(|band| band.is_free()).map(RailBand::half).min().unwrap_or(0);
        let spare = greatest(0, most + 1, |margin| range(margin).is_some());
        // Whole nanometres: the low end up to an even step, the high end down to one.
        let whole = |(low, high): (i64, i64)| (2 * (low + 1).div_euclid(2), 2 * high.div_euclid(2));
        let (lowest, highest) = range(spare).map(whole).filter(|(low, high)| low <= high).unwrap_or((up, up));
        let is_rigid = bands.iter().any(|band| !band.is_free());
        WidestMargin { spare: if is_rigid { 0 } else { spare }, lowest, highest }
    }

    /// The array's left end: its own where its posts carry it there; otherwise the graduation nearest to that, between it
    /// and `left`, at which they do.
    fn nearest_left(&self, rails: &[RailPlacement], left: i64, graduations: Graduations) -> i64 {
        let is_carried = |left: i64| {
            let in_range = (self.left.0..=self.left.1).contains(&left);
            let ends = |rail: &RailPlacement| Some((rail.posts.first()?.1, rail.posts.last()?.1));
            in_range
                && rails.iter().zip(&self.rails).all(|(placed, rail)| {
                    ends(placed)
                        .is_some_and(|(first, last)| rail.carries(first, last, left, self.length, placed.v))
                })
        };
        let own = Point::from(self.array.at).u;
        if is_carried(own) {
            return own;
        }
        let (step, toward) = (graduations.step(), (own - left).signum());
        let mut beside = [graduations.at_or_below(left), graduations.at_or_above(left)];
        if toward > 0 {
            beside.reverse();
        }
        let Some(first) = beside.into_iter().find(|&left| is_carried(left)) else { return left };
        let beyond = (own - first).abs() / step + 1;
        let steps = greatest(0, beyond, |steps| is_carried(first + toward * steps * step));
        first + toward * steps * step
    }
}

fn rail_placement(rail: &Rail, band: &RailBand, v: i64) -> RailPlacement {
    let objective = |post: &CandidatePost| {
        let interval = rail.interval_at(post.line, v);
        interval.map_or(post.objective, |interval| rail.objective(post.line, interval, v))
    };
    let anchor = |post: &CandidatePost| (rail.lines[post.line].anchor, rail.u_at(post.line, v));
    let lower_end = |post: &CandidatePost| rail.interval_at(post.line, v).map_or(v, |interval| interval.from);
    RailPlacement {
        v,
        objective: band.posts.iter().map(objective).sum(),
        posts: band.posts.iter().map(anchor).collect(),
        intervals: band.posts.iter().map(lower_end).collect(),
    }
}
