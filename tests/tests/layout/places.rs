//! Places of posts on a small job, and the work of one post at each.
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::ops::Add;
use std::rc::Rc;

use takeoff_core::layout::cost;
use takeoff_core::relocation::Situation;
use takeoff_core::takeoff::{Takeoff, takeoff};

use crate::small_job::{SIXTEENTH, SmallJob};

/// The objective of posts: failing ones first, then those in narrow intervals, then money.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub(crate) struct Objective {
    pub(crate) failing: u32,
    pub(crate) narrow: u32,
    pub(crate) money: f64,
}

impl Add for Objective {
    type Output = Objective;
    fn add(self, other: Objective) -> Objective {
        Objective {
            failing: self.failing + other.failing,
            narrow: self.narrow + other.narrow,
            money: self.money + other.money,
        }
    }
}

/// The work of one post at a place.
#[derive(Debug, PartialEq)]
pub(crate) struct Work {
    /// Whether the place is clear of the setbacks and has tile over it.
    pub(crate) allowed: bool,
    /// Whether the post severs a tile or fails a check.
    pub(crate) failing: bool,
    pub(crate) money: f64,
    /// Everything that may not change within the least margin, as text.
    pub(crate) description: String,
}

/// The wood under a post: a rafter, or a board in the bay on the right of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Rafter(usize),
    Bay(usize),
}

impl Anchor {
    /// The number of the rafter for the stagger.
    pub(crate) fn rafter(self) -> i64 {
        match self {
            Anchor::Rafter(number) | Anchor::Bay(number) => number as i64,
        }
    }
}

/// The places of a small job, each taken off once. Lengths are in nanometres.
pub(crate) struct Places<'a> {
    pub(crate) small: &'a SmallJob,
    cache: RefCell<Cache>,
}

/// Work by `u` and `v`.
type Cache = BTreeMap<(i64, i64), Option<Rc<Work>>>;

impl<'a> Places<'a> {
    pub(crate) fn new(small: &'a SmallJob) -> Places<'a> {
        Places { small, cache: RefCell::default() }
    }

    /// The `u` of an anchor at a height; `None` for a bay without room for a board.
    pub(crate) fn u(&self, anchor: Anchor, v: i64) -> Option<i64> {
        match anchor {
            Anchor::Rafter(rafter) => self.centre(rafter, v),
            Anchor::Bay(left) => {
                let (left, right) = (self.centre(left, v)?, self.centre(left + 1, v)?);
                let has_room = right - left > self.small.rafter_width * SIXTEENTH;
                has_room.then(|| half_away(left + right, 2))
            }
        }
    }

    fn centre(&self, rafter: usize, v: i64) -> Option<i64> {
        let [lower, upper] = *self.small.rafters.get(rafter)?;
        Some(lower * SIXTEENTH + half_away((upper - lower) * v, self.small.height))
    }

    /// The work of a post at a place; `None` where a job can have no post.
    pub(crate) fn work(&self, u: i64, v: i64) -> Option<Rc<Work>> {
        if let Some(work) = self.cache.borrow().get(&(u, v)) {
            return work.clone();
        }
        let work = self.take_off(u, v).map(Rc::new);
        self.cache.borrow_mut().insert((u, v), work.clone());
        work
    }

    fn take_off(&self, u: i64, v: i64) -> Option<Work> {
        let job = self.small.with_single_post(u, v)?;
        let in_setback = job.findings().iter().any(|finding| finding.code == "inside-setback");
        let taken = takeoff(&job).unwrap();
        let post = &taken.slopes[0].posts[0];
        let (top, height) = (&post.top, &post.height);
        let low = [height.cone, height.post].into_iter().flatten().any(|top| top <= height.tile);
        let spacing_mm = self.small.staple_spacing as f64 * 1.5875;
        let patches = &taken.slopes[0].patches;
        let staples: f64 =
            patches.iter().map(|patch| patch.perimeter().mm() / spacing_mm - patch.staples as f64).sum();
        Some(Work {
            allowed: !in_setback && post.situation != Situation::None,
            failing: post.severed || !top.passes() || low,
            money: cost(&job, &taken).unwrap().total() + staples * self.small.staple,
            description: description(&taken, low),
        })
    }

    /// The objective of a post on an anchor; `None` where a layout may not put one. It is the least margin or more from a
    /// change of its work, or narrow: in the middle of an interval shorter than twice the margin.
    pub(crate) fn objective(&self, anchor: Anchor, v: i64) -> Option<Objective> {
        let work = self.work(self.u(anchor, v)?, v).filter(|work| work.allowed)?;
        let margin = self.small.least_margin;
        let [down, up] = [-1, 1].map(|direction| self.reach(anchor, v, direction, &work));
        let narrow = down < margin || up < margin;
        // Places are a sixteenth apart: the outermost ones are less than that from a change of the work.
        let is_middle = down == up && down + up + 2 <= 2 * margin;
        (!narrow || is_middle).then(|| self.counted(&work, narrow))
    }

    /// The objective of a post of a layout at any place; it is narrow where its work changes within the margin.
    pub(crate) fn objective_in_layout(&self, u: i64, v: i64) -> Objective {
        let work = self.work(u, v).unwrap();
        let rafters = self.small.rafters.len();
        let mut anchors = (0..rafters).map(Anchor::Rafter).chain((0..rafters - 1).map(Anchor::Bay));
        let anchor = anchors.find(|&anchor| self.u(anchor, v) == Some(u)).unwrap();
        let reach = [-1, 1].map(|direction| self.reach(anchor, v, direction, &work));
        let narrow = reach.iter().any(|&reach| reach < self.small.least_margin);
        // A narrow post is in an interval shorter than twice the margin.
        assert!(!narrow || reach[0] + reach[1] < 2 * self.small.least_margin, "{}", self.small.base["name"]);
        self.counted(&work, narrow)
    }

    /// The objective of a post with this work.
    pub(crate) fn counted(&self, work: &Work, narrow: bool) -> Objective {
        let (failing, extra) = match self.small.cost_of_failing {
            _ if !work.failing => (0, 0.0),
            Some(cost) => (0, cost),
            None => (1, 0.0),
        };
        Objective { failing, narrow: u32::from(narrow), money: work.money + extra }
    }

    /// Sixteenths over which the work is constant, in one direction along the anchor; twice the least margin at most.
    pub(crate) fn reach(&self, anchor: Anchor, v: i64, direction: i64, work: &Work) -> i64 {
        let same = |by: &i64| {
            let v = v + direction * by * SIXTEENTH;
            let there = self.u(anchor, v).and_then(|u| self.work(u, v));
            there.is_some_and(|there| there.description == work.description)
        };
        (1..=2 * self.small.least_margin).take_while(same).count() as i64
    }
}

/// `top / over` to the nearest whole number, half away from zero, for `over` above 0.
fn half_away(top: i64, over: i64) -> i64 {
    (2 * top.abs() + over) / (2 * over) * top.signum()
}

/// The work of one post on the roof as text, without its measures.
fn description(taken: &Takeoff, low: bool) -> String {
    let (slope, counts) = (&taken.slopes[0], &taken.counts);
    let post = &slope.posts[0];
    let kinds: Vec<_> = slope.cuts.iter().map(|cut| cut.judged.kind()).collect();
    let handled: Vec<_> = taken.spares.iter().map(|of| of.handled).collect();
    let fasteners = taken.materials.iter().find(|line| line.item.name() == "fastener for tile");
    let fasteners = fasteners.map_or(0.0, |line| line.need);
    let patches: Vec<_> = slope.patches.iter().map(|patch| (patch.pieces, patch.lap_line)).collect();
    let passes = (post.top.tuck_short > 0, post.top.side_short > 0, low);
    let tiles = (counts.removed, counts.loosened, handled, fasteners, slope.battens.len());
    format!("{:?}", (post.situation, kinds, post.deck.method.kind(), passes, tiles, patches))
}
