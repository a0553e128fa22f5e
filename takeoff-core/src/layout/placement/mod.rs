//! From the least score to a place: of equally good ones that with the largest margin, on a mark of the tape.
mod laid_job;

pub(crate) use laid_job::*;

use crate::geometry::{Point, grid};

use crate::layout::graduations::Marks;
use crate::layout::objective::Score;
use crate::layout::rail::Best;
use crate::layout::rail::Foot;
use crate::layout::rail::least;
use crate::layout::rail::{Rail, Standing};
use crate::layout::search::{Found, Search};

/// An array where it is placed, in grid steps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Placed {
    pub(crate) score: Score,
    /// The lower left corner of its lowest left module.
    pub(crate) at: Point,
    /// From the lowest up.
    pub(crate) rails: Vec<PlacedRail>,
    /// How far every post is, beyond the least margin, from a change of its work up or down.
    pub(crate) spare_margin: i64,
}

/// A rail where it is placed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct PlacedRail {
    pub(crate) v: i64,
    pub(crate) score: Score,
    /// Its posts from left to right: what each stands on, and where.
    pub(crate) posts: Vec<(Foot, i64)>,
    /// Where the span of each begins: two layouts differ where a post stands on another foot or in another span.
    pub(crate) spans: Vec<i64>,
}

impl Placed {
    /// Whether some post stands on another foot or in another span.
    pub(crate) fn differs_from(&self, other: &Placed) -> bool {
        let key = |placed: &Placed| -> Vec<(Vec<Foot>, Vec<i64>)> {
            let feet = |rail: &PlacedRail| rail.posts.iter().map(|(foot, _)| *foot).collect();
            placed.rails.iter().map(|rail| (feet(rail), rail.spans.clone())).collect()
        };
        key(self) != key(other)
    }
}

/// A rail with its posts, and from where to where it may be without a change of its score.
struct Held {
    v: i64,
    posts: Vec<Standing>,
    /// The band; the rail is held where it is when that has one height only.
    from: i64,
    to: i64,
}

impl Held {
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
    pub(crate) fn settled(&mut self, equals: &[Found], marks: Marks) -> Option<Placed> {
        let own = Point::from(self.array.at);
        let mut best: Option<Placed> = None;
        for found in equals {
            let Some(placed) = self.settle(found, marks) else { continue };
            let key = |placed: &Placed| {
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

    fn settle(&mut self, found: &Found, marks: Marks) -> Option<Placed> {
        let mut held = Vec::with_capacity(self.rails.len());
        for rail in 0..self.rails.len() {
            held.push(self.held(rail, found)?);
        }
        let (spare_margin, lowest, highest) = self.shifts_of_largest_margin(&held, found.up);
        let origin = Point::from(self.array.at).v;
        // The array is moved no further than it must.
        let up = marks.nearest(origin, origin + lowest, origin + highest) - origin;
        let rails = held.iter().zip(&self.rails).map(|(held, rail)| {
            let v = if held.is_free() {
                let (low, high) = (held.from.max(rail.from + up), held.to.min(rail.to + up));
                marks.nearest((held.from + held.to) / 2, low, high)
            } else {
                held.v
            };
            self.placed(rail, held, v)
        });
        let rails: Vec<PlacedRail> = rails.collect();
        let score = rails.iter().map(|rail| rail.score).sum();
        let left = self.settled_left(&rails, found.left, marks);
        Some(Placed { score, at: Point::new(left, origin + up), rails, spare_margin })
    }

    fn placed(&self, rail: &Rail, held: &Held, v: i64) -> PlacedRail {
        let of = |post: &Standing| {
            let span = rail.span_at(post.footing, v);
            span.map_or(post.score, |span| rail.score(post.footing, span, v))
        };
        let posts = held.posts.iter().map(|post| (rail.feet[post.footing].foot, rail.u_at(post.footing, v)));
        let spans = held.posts.iter().map(|post| rail.span_at(post.footing, v).map_or(v, |span| span.from));
        let score = held.posts.iter().map(of).sum();
        PlacedRail { v, score, posts: posts.collect(), spans: spans.collect() }
    }

    /// Of a rail's heights of the least score the one whose posts have the widest band.
    fn held(&mut self, rail: usize, found: &Found) -> Option<Held> {
        let mut best: Option<Held> = None;
        for &v in &found.heights[rail] {
            let at = self.at_height(found.phase, rail, v);
            let owner = &self.rails[rail];
            let score = least(owner, &at, found.left, self.long, v);
            let cheapest =
                |best: &&Best| Some(best.score) == score && owner.carries(best, found.left, self.long, v);
            let Some(ends) = at.iter().find(cheapest) else { continue };
            let posts = owner.posts(&owner.standing(v, found.phase), v, ends);
            let held = band(owner, v, posts, found.left, self.long);
            if best.as_ref().is_none_or(|best| held.half() > best.half()) {
                best = Some(held);
            }
        }
        best
    }

    /// The largest margin that all free rails can have together, beyond the least one, and the ways up that allow it:
    /// rail `r` has its place in `[from + t, to − t]` and in its window. Found by halving.
    fn shifts_of_largest_margin(&self, held: &[Held], up: i64) -> (i64, i64, i64) {
        let ways = |margin: i64| {
            let ends = held.iter().zip(&self.rails).map(|(held, rail)| {
                let margin = if held.is_free() { margin } else { 0 };
                (held.from + margin - rail.to, held.to - margin - rail.from)
            });
            let (low, high) = ends.fold(self.up, |(low, high), (from, to)| (low.max(from), high.min(to)));
            let fits = held.iter().all(|held| !held.is_free() || held.half() >= margin);
            (fits && low <= high).then_some((low, high))
        };
        let most = held.iter().filter(|held| held.is_free()).map(Held::half).min().unwrap_or(0);
        let (mut fits, mut too_much) = (0, most + 1);
        while too_much - fits > 1 {
            let middle = (fits + too_much) / 2;
            if ways(middle).is_some() { fits = middle } else { too_much = middle }
        }
        // Whole nanometres both ways.
        let whole = |(low, high): (i64, i64)| (2 * (low + 1).div_euclid(2), 2 * high.div_euclid(2));
        let (low, high) = ways(fits).map(whole).filter(|(low, high)| low <= high).unwrap_or((up, up));
        let rigid = held.iter().any(|held| !held.is_free());
        (if rigid { 0 } else { fits }, low, high)
    }

    /// The array stays where it is along the eave if its posts carry it there; else it is moved no further than it must.
    fn settled_left(&self, rails: &[PlacedRail], left: i64, marks: Marks) -> i64 {
        let carried = |left: i64| {
            let within = (self.left.0..=self.left.1).contains(&left);
            let ends = |rail: &PlacedRail| Some((rail.posts.first()?.1, rail.posts.last()?.1));
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
        let (step, toward) = (marks.step(), (own - left).signum());
        let mut beside = [marks.up_to(left), marks.from(left)];
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
fn band(rail: &Rail, v: i64, posts: Vec<Standing>, left: i64, long: i64) -> Held {
    let rates = &rail.trial.rates;
    let (mut from, mut to) = (rail.low, rail.high);
    for post in &posts {
        let span = rail.span_at(post.footing, v);
        let flat = span.filter(|span| span.sheet.is_none() || rates.felt + rates.staples == 0.0);
        match flat.filter(|_| !post.fixed && !rail.board_changes(post.footing)) {
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
    Held { v, posts, from, to }
}
