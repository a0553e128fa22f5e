//! From the least score to a place: of equally good ones that with the largest margin, on a mark of the tape.
mod laid_job;

pub(crate) use laid_job::*;

use crate::geometry::{Point, grid};

use crate::layout::graduations::Graduations;
use crate::layout::objective::Objective;
use crate::layout::rail::Anchor;
use crate::layout::rail::CheapestPath;
use crate::layout::rail::least;
use crate::layout::rail::{CandidatePost, Rail};
use crate::layout::search::{ScoredShift, Search};

/// An array where it is placed, in grid steps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Placement {
    pub(crate) objective: Objective,
    /// The lower left corner of its lowest left module.
    pub(crate) at: Point,
    /// From the lowest up.
    pub(crate) rails: Vec<RailPlacement>,
    /// How far every post is, beyond the least margin, from a change of its work up or down.
    pub(crate) spare_margin: i64,
}

/// A rail where it is placed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct RailPlacement {
    pub(crate) v: i64,
    pub(crate) objective: Objective,
    /// Its posts from left to right: what each stands on, and where.
    pub(crate) posts: Vec<(Anchor, i64)>,
    /// Where the span of each begins: two layouts differ where a post stands on another foot or in another span.
    pub(crate) spans: Vec<i64>,
}

impl Placement {
    /// Whether some post stands on another foot or in another span.
    pub(crate) fn differs_from(&self, other: &Placement) -> bool {
        let key = |placed: &Placement| -> Vec<(Vec<Anchor>, Vec<i64>)> {
            let lines = |rail: &RailPlacement| rail.posts.iter().map(|(anchor, _)| *anchor).collect();
            placed.rails.iter().map(|rail| (lines(rail), rail.spans.clone())).collect()
        };
        key(self) != key(other)
    }
}

/// A rail with its posts, and from where to where it may be without a change of its score.
struct RailBand {
    v: i64,
    posts: Vec<CandidatePost>,
    /// The band; the rail is held where it is when that has one height only.
    from: i64,
    to: i64,
}

impl RailBand {
    fn is_free(&self) -> bool {
        self.from < self.to
    }

    /// How far the rail is at best from the ends of its band.
    fn half(&self) -> i64 {
        (self.to - self.from) / 2
    }
}

impl Search<'_> {
    /// Of equally good places the one with the largest margin, then the lowest; each rail in the middle of its band as
    /// far as its window goes, on a whole 1/16 in or millimetre where one is free.
    pub(crate) fn place_best(
        &mut self,
        equals: &[ScoredShift],
        graduations: Graduations,
    ) -> Option<Placement> {
        let own = Point::from(self.array.at);
        let mut best: Option<Placement> = None;
        for found in equals {
            let Some(placed) = self.place(found, graduations) else { continue };
            let key = |placed: &Placement| {
                let heights: Vec<i64> = placed.rails.iter().map(|rail| rail.v).collect();
                let moved = [placed.at.v - own.v, placed.at.u - own.u].map(i64::abs);
                (-placed.spare_margin, heights, moved, placed.at.u)
            };
            if best.as_ref().is_none_or(|best| key(&placed) < key(best)) {
                best = Some(placed);
            }
        }
        best
    }

    fn place(&mut self, found: &ScoredShift, graduations: Graduations) -> Option<Placement> {
        let mut band = Vec::with_capacity(self.rails.len());
        for rail in 0..self.rails.len() {
            band.push(self.band(rail, found)?);
        }
        let (spare_margin, lowest, highest) = self.shifts_of_largest_margin(&band, found.up);
        let origin = Point::from(self.array.at).v;
        // The array is moved no further than it must.
        let up = graduations.nearest(origin, origin + lowest, origin + highest) - origin;
        let rails = band.iter().zip(&self.rails).map(|(band, rail)| {
            let v = if band.is_free() {
                let (low, high) = (band.from.max(rail.from + up), band.to.min(rail.to + up));
                graduations.nearest((band.from + band.to) / 2, low, high)
            } else {
                band.v
            };
            self.placed(rail, band, v)
        });
        let rails: Vec<RailPlacement> = rails.collect();
        let objective = rails.iter().map(|rail| rail.objective).sum();
        let left = self.final_left(&rails, found.left, graduations);
        Some(Placement { objective, at: Point::new(left, origin + up), rails, spare_margin })
    }

    fn placed(&self, rail: &Rail, band: &RailBand, v: i64) -> RailPlacement {
        let of = |post: &CandidatePost| {
            let span = rail.interval_at(post.line, v);
            span.map_or(post.objective, |span| rail.objective(post.line, span, v))
        };
        let posts = band.posts.iter().map(|post| (rail.lines[post.line].anchor, rail.u_at(post.line, v)));
        let spans = band.posts.iter().map(|post| rail.interval_at(post.line, v).map_or(v, |span| span.from));
        let objective = band.posts.iter().map(of).sum();
        RailPlacement { v, objective, posts: posts.collect(), spans: spans.collect() }
    }

    /// Of a rail's heights of the least score the one whose posts have the widest band.
    fn band(&mut self, rail: usize, found: &ScoredShift) -> Option<RailBand> {
        let mut best: Option<RailBand> = None;
        for &v in &found.heights[rail] {
            let at = self.at_height(found.stagger_phase, rail, v);
            let owner = &self.rails[rail];
            let objective = least(owner, &at, found.left, self.long, v);
            let cheapest = |best: &&CheapestPath| {
                Some(best.objective) == objective && owner.carries(best, found.left, self.long, v)
            };
            let Some(ends) = at.iter().find(cheapest) else { continue };
            let posts = owner.posts(&owner.candidates_at(v, found.stagger_phase), v, ends);
            let band = band(owner, v, posts, found.left, self.long);
            if best.as_ref().is_none_or(|best| band.half() > best.half()) {
                best = Some(band);
            }
        }
        best
    }

    /// The largest margin that all free rails can have together, beyond the least one, and the ways up that allow it:
    /// rail `r` has its place in `[from + t, to − t]` and in its window. Found by halving.
    fn shifts_of_largest_margin(&self, band: &[RailBand], up: i64) -> (i64, i64, i64) {
        let ways = |margin: i64| {
            let ends = band.iter().zip(&self.rails).map(|(band, rail)| {
                let margin = if band.is_free() { margin } else { 0 };
                (band.from + margin - rail.to, band.to - margin - rail.from)
            });
            let (low, high) = ends.fold(self.up, |(low, high), (from, to)| (low.max(from), high.min(to)));
            let fits = band.iter().all(|band| !band.is_free() || band.half() >= margin);
            (fits && low <= high).then_some((low, high))
        };
        let most = band.iter().filter(|band| band.is_free()).map(RailBand::half).min().unwrap_or(0);
        let (mut fits, mut too_much) = (0, most + 1);
        while too_much - fits > 1 {
            let middle = (fits + too_much) / 2;
            if ways(middle).is_some() { fits = middle } else { too_much = middle }
        }
        // Whole nanometres both ways.
        let whole = |(low, high): (i64, i64)| (2 * (low + 1).div_euclid(2), 2 * high.div_euclid(2));
        let (low, high) = ways(fits).map(whole).filter(|(low, high)| low <= high).unwrap_or((up, up));
        let rigid = band.iter().any(|band| !band.is_free());
        (if rigid { 0 } else { fits }, low, high)
    }

    /// The array stays where it is along the eave if its posts carry it there; else it is moved no further than it must.
    fn final_left(&self, rails: &[RailPlacement], left: i64, graduations: Graduations) -> i64 {
        let carried = |left: i64| {
            let within = (self.left.0..=self.left.1).contains(&left);
            let ends = |rail: &RailPlacement| Some((rail.posts.first()?.1, rail.posts.last()?.1));
            within
                && rails.iter().zip(&self.rails).all(|(placed, rail)| {
                    let ends = ends(placed);
                    ends.is_some_and(|(first, last)| {
                        rail.carries_from_to(first, last, left, self.long, placed.v)
                    })
                })
        };
        let own = Point::from(self.array.at).u;
        if carried(own) {
            return own;
        }
        // From where it is known to be carried, mark by mark toward its own place.
        let (step, toward) = (graduations.step(), (own - left).signum());
        let mut beside = [graduations.up_to(left), graduations.from(left)];
        if toward > 0 {
            beside.reverse();
        }
        let Some(first) = beside.into_iter().find(|&left| carried(left)) else { return left };
        let (mut fits, mut beyond) = (0, (own - first).abs() / step + 1);
        while beyond - fits > 1 {
            let middle = (fits + beyond) / 2;
            if carried(first + toward * middle * step) { fits = middle } else { beyond = middle }
        }
        first + toward * fits * step
    }
}

/// From where to where a rail may be with the same posts at the same score, its left end at `left`.
fn band(rail: &Rail, v: i64, posts: Vec<CandidatePost>, left: i64, long: i64) -> RailBand {
    let rates = &rail.model.rates;
    let (mut from, mut to) = (rail.low, rail.high);
    for post in &posts {
        let span = rail.interval_at(post.line, v);
        let flat = span.filter(|span| span.patch.is_none() || rates.felt + rates.staples == 0.0);
        match flat.filter(|_| !post.fixed && !rail.board_changes(post.line)) {
            Some(span) => (from, to) = (from.max(span.from), to.min(span.to)),
            None => (from, to) = (v, v),
        }
    }
    for zone in &rail.rails.zones {
        let (lower, upper) = (grid(zone.from.v), grid(zone.to.v));
        if v < lower {
            to = to.min(lower - 2);
        } else if v > upper {
            from = from.max(upper + 2);
        } else {
            (from, to) = (from.max(lower), to.min(upper));
        }
    }
    // The ways between posts on crooked rafters change evenly: what holds at both ends holds between them.
    let (from, to) = (from.min(v), to.max(v));
    let rigid =
        posts.iter().any(|post| post.fixed) || ![from, to].iter().all(|&v| rail.holds(&posts, v, left, long));
    let (from, to) = if rigid { (v, v) } else { (from, to) };
    RailBand { v, posts, from, to }
}
