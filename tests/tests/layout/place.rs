//! Where posts can stand on a small job, and what each place takes by itself.
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::ops::Add;
use std::rc::Rc;

use takeoff_core::layout::cost;
use takeoff_core::relocation::Situation;
use takeoff_core::{Takeoff, takeoff};

use crate::small::{SIXTEENTH, Small};

/// What posts add up to: failing ones first, then thin ones, then money.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub(crate) struct Sum {
    pub(crate) failing: u32,
    pub(crate) thin: u32,
    pub(crate) money: f64,
}

impl Add for Sum {
    type Output = Sum;
    fn add(self, other: Sum) -> Sum {
        Sum {
            failing: self.failing + other.failing,
            thin: self.thin + other.thin,
            money: self.money + other.money,
        }
    }
}

/// What a post takes at a place.
#[derive(Debug, PartialEq)]
pub(crate) struct Work {
    /// Off the setbacks, and with tile over it.
    pub(crate) allowed: bool,
    /// Whether it severs a tile, or fails a check.
    pub(crate) failing: bool,
    pub(crate) money: f64,
    /// All that may not change within the least margin, in words.
    pub(crate) what: String,
}

/// What a post stands on: a rafter, or a board in the bay on the right of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stand {
    Rafter(usize),
    Bay(usize),
}

impl Stand {
    /// The number that counts for stagger.
    pub(crate) fn number(self) -> i64 {
        match self {
            Stand::Rafter(number) | Stand::Bay(number) => number as i64,
        }
    }
}

/// The places of a small job, each looked at once. Lengths are in nanometres.
pub(crate) struct Places<'a> {
    pub(crate) small: &'a Small,
    known: RefCell<Known>,
}

/// Work by `u` and `v`.
type Known = BTreeMap<(i64, i64), Option<Rc<Work>>>;

impl<'a> Places<'a> {
    pub(crate) fn of(small: &'a Small) -> Places<'a> {
        Places { small, known: RefCell::default() }
    }

    /// Where a stand is at a height; `None` in a bay that is shut.
    pub(crate) fn u(&self, stand: Stand, v: i64) -> Option<i64> {
        match stand {
            Stand::Rafter(rafter) => self.centre(rafter, v),
            Stand::Bay(left) => {
                let (left, right) = (self.centre(left, v)?, self.centre(left + 1, v)?);
                let open = right - left > self.small.rafter_width * SIXTEENTH;
                open.then(|| half_away(left + right, 2))
            }
        }
    }

    fn centre(&self, rafter: usize, v: i64) -> Option<i64> {
        let [lower, upper] = *self.small.rafters.get(rafter)?;
        Some(lower * SIXTEENTH + half_away((upper - lower) * v, self.small.height))
    }

    /// What a post takes at a place; `None` where no job can have one.
    pub(crate) fn work(&self, u: i64, v: i64) -> Option<Rc<Work>> {
        if let Some(work) = self.known.borrow().get(&(u, v)) {
            return work.clone();
        }
        let work = self.looked_at(u, v).map(Rc::new);
        self.known.borrow_mut().insert((u, v), work.clone());
        work
    }

    fn looked_at(&self, u: i64, v: i64) -> Option<Work> {
        let job = self.small.alone(u, v)?;
        let in_setback = job.findings().iter().any(|finding| finding.code == "inside-setback");
        let taken = takeoff(&job).unwrap();
        let post = &taken.slopes[0].posts[0];
        let (top, height) = (&post.top, &post.height);
        let low = [height.cone_mm, height.post_mm].into_iter().flatten().any(|mm| mm <= height.tile_mm);
        let spacing_mm = self.small.staple_spacing as f64 * 1.5875;
        let patches = &taken.slopes[0].patches;
        let staples: f64 =
            patches.iter().map(|patch| patch.perimeter_mm / spacing_mm - patch.staples as f64).sum();
        Some(Work {
            allowed: !in_setback && post.situation != Situation::None,
            failing: post.severed || !top.passes || low,
            money: cost(&job, &taken).unwrap().total() + staples * self.small.staple,
            what: what(&taken, low),
        })
    }

    /// What a post on a stand adds to a sum; `None` where a layout may not put it. It keeps the least margin from where
    /// its work changes, or is thin: in the middle of an interval that is shorter than twice the margin.
    pub(crate) fn sum(&self, stand: Stand, v: i64) -> Option<Sum> {
        let work = self.work(self.u(stand, v)?, v).filter(|work| work.allowed)?;
        let margin = self.small.least_margin;
        let [down, up] = [-1, 1].map(|way| self.reach(stand, v, way, &work));
        let thin = down < margin || up < margin;
        // Of so many places a sixteenth apart the outermost are less than that from where the work changes.
        let is_middle = down == up && down + up + 2 <= 2 * margin;
        (!thin || is_middle).then(|| self.counted(&work, thin))
    }

    /// What a post of a layout adds to a sum, wherever it stands; it is thin where its work changes within the margin.
    pub(crate) fn told(&self, u: i64, v: i64) -> Sum {
        let work = self.work(u, v).unwrap();
        let rafters = self.small.rafters.len();
        let mut stands = (0..rafters).map(Stand::Rafter).chain((0..rafters - 1).map(Stand::Bay));
        let stand = stands.find(|&stand| self.u(stand, v) == Some(u)).unwrap();
        let reach = [-1, 1].map(|way| self.reach(stand, v, way, &work));
        let thin = reach.iter().any(|&reach| reach < self.small.least_margin);
        // What is thin is in an interval shorter than twice the margin.
        assert!(!thin || reach[0] + reach[1] < 2 * self.small.least_margin, "{}", self.small.base["name"]);
        self.counted(&work, thin)
    }

    /// What a post of that work adds to a sum.
    pub(crate) fn counted(&self, work: &Work, thin: bool) -> Sum {
        let (failing, extra) = match self.small.cost_of_failing {
            _ if !work.failing => (0, 0.0),
            Some(cost) => (0, cost),
            None => (1, 0.0),
        };
        Sum { failing, thin: u32::from(thin), money: work.money + extra }
    }

    /// Over how many sixteenths the work stays what it is, one way along the stand; more than twice the least margin do
    /// not matter.
    pub(crate) fn reach(&self, stand: Stand, v: i64, way: i64, work: &Work) -> i64 {
        let same = |by: &i64| {
            let v = v + way * by * SIXTEENTH;
            let there = self.u(stand, v).and_then(|u| self.work(u, v));
            there.is_some_and(|there| there.what == work.what)
        };
        (1..=2 * self.small.least_margin).take_while(same).count() as i64
    }
}

/// `top / over` to the nearest whole number, half away from zero, for `over` above 0.
fn half_away(top: i64, over: i64) -> i64 {
    (2 * top.abs() + over) / (2 * over) * top.signum()
}

/// What one post does to the roof, all but its measures.
fn what(taken: &Takeoff, low: bool) -> String {
    let (slope, counts) = (&taken.slopes[0], &taken.counts);
    let post = &slope.posts[0];
    let kinds: Vec<_> = slope.cuts.iter().map(|cut| cut.kind).collect();
    let handled: Vec<_> = taken.spares.iter().map(|of| of.handled).collect();
    let fasteners = taken.materials.iter().find(|line| line.item == "fastener for tile");
    let fasteners = fasteners.map_or(0.0, |line| line.need);
    let patches: Vec<_> = slope.patches.iter().map(|patch| (patch.pieces, patch.lap_line_mm)).collect();
    let passes = (post.top.tuck_short_mm > 0.0, post.top.side_short_mm > 0.0, low);
    let tiles = (counts.removed, counts.loosened, handled, fasteners, slope.battens.len());
    format!("{:?}", (post.situation, kinds, post.deck.method, passes, tiles, patches))
}
