//! Better places of single posts along their rafters.
use crate::geometry::{Point, grid, to_mm};
use crate::layout::intervals::{Exclusion, FeasibleInterval, feasible_intervals, permitted_ranges};
use crate::layout::objective::Objective;
use crate::layout::post_cost::PostCostModel;
use crate::layout::replaced::array_above;
use crate::layout::result::Nudge;
use crate::model::{Job, Post, Rafters, Slope};
use crate::num::math;
use crate::roof::Site;
use crate::units::{Currency, Length};

/// The posts of a job that are below no array with rails, are not fixed, and have a cheaper place along their rafters.
///
/// # Rule
///
/// A post can move by whole 1/16 in or millimetres, within the job's window (or one exposure), to a place that keeps the
/// least margin, the outline, the setbacks, and its deck flashing clear of those of other posts. The best place has the
/// least objective; of equal ones it is the nearest. It is reported only if it is better than the post's own.
pub(crate) fn nudges(job: &Job, currency: &Currency) -> Vec<Nudge> {
    let mut found = Vec::new();
    for slope in &job.slopes {
        let site = Site::of(slope, &job.practice);
        let neighbours = Neighbours::new(slope);
        let posts = slope.posts.iter().enumerate();
        let single = posts.filter(|(_, post)| !post.fixed && array_above(slope, post).is_none());
        found.extend(single.filter_map(|(index, post)| {
            let model = PostCostModel::new(job, &site, &post.assembly);
            let mover = PostMover { model, post, line: Line::new(slope, post) };
            mover.nudge(job, &neighbours, index, currency)
        }));
    }
    found
}

/// The posts of a slope, ascending by `u`.
struct Neighbours(Vec<(Point, usize)>);

impl Neighbours {
    fn new(slope: &Slope) -> Neighbours {
        let posts = slope.posts.iter().enumerate();
        let mut posts: Vec<(Point, usize)> = posts.map(|(index, post)| (post.at.into(), index)).collect();
        posts.sort_unstable();
        Neighbours(posts)
    }

    /// The other posts within `left` to `right` along the eave: a scan of that strip alone keeps the time for all posts of
    /// a slope far below the square of their number.
    fn between(&self, left: i64, right: i64, own: usize) -> Vec<Point> {
        let first = self.0.partition_point(|(at, _)| at.u < left);
        let strip = self.0[first..].iter().take_while(|(at, _)| at.u <= right);
        strip.filter(|(_, index)| *index != own).map(|(at, _)| *at).collect()
    }
}

/// The line along which a post can move: at its own distance from the centre line of the nearest rafter, or straight up
/// without rafters.
struct Line<'a> {
    u: i64,
    rafter: Option<(&'a Rafters, usize, i64)>,
}

impl<'a> Line<'a> {
    fn new(slope: &'a Slope, post: &Post) -> Line<'a> {
        let u = grid(post.at.u);
        let rafter = slope.rafters.as_ref().and_then(|rafters| {
            let distance = |&rafter: &usize| (rafters.centre(rafter, post.at.v) - post.at.u).abs();
            let nearest = (0..rafters.lines.len()).min_by_key(distance)?;
            Some((rafters, nearest, u - grid(rafters.centre(nearest, post.at.v))))
        });
        Line { u, rafter }
    }

    fn at(&self, v: i64) -> Point {
        let u = match self.rafter {
            Some((rafters, nearest, off)) => grid(rafters.centre(nearest, Length::from_nm(v / 2))) + off,
            None => self.u,
        };
        Point::new(u, v)
    }
}

struct PostMover<'a> {
    model: PostCostModel<'a>,
    post: &'a Post,
    line: Line<'a>,
}

impl PostMover<'_> {
    fn nudge(&self, job: &Job, neighbours: &Neighbours, index: usize, currency: &Currency) -> Option<Nudge> {
        let PostMover { model, post, line } = self;
        let site = model.site;
        let at = Point::from(post.at);
        let step = model.graduations.step();
        let window = job.practice.window.map_or_else(|| exposure(site, at.v), grid);
        let steps = window / step;
        let (low, high) = (at.v - steps * step, at.v + steps * step);
        let (objective, by) = self.best(neighbours, index, low, high)?;
        let work = model.work(at);
        let now = model.money(&work, at);
        let fails = work.fails() || !work.meets_tile();
        if !fails && objective.money >= now {
            return None;
        }
        let there = model.work(line.at(at.v + by));
        let saved = Objective::from_money(now.saturating_sub(objective.money));
        Some(Nudge {
            slope: site.slope.name.clone(),
            post: post.name.clone(),
            up_mm: to_mm(by),
            v_mm: to_mm(at.v + by),
            situation: work.state.situation,
            better: there.state.situation,
            patched: work.patch.is_some(),
            better_patched: there.patch.is_some(),
            fails,
            saves: currency.nearest(saved.amount()),
        })
    }

    /// The least objective of a place from `low` to `high`, and the move to it.
    fn best(&self, neighbours: &Neighbours, index: usize, low: i64, high: i64) -> Option<(Objective, i64)> {
        let PostMover { model, post, line } = self;
        let u_at = |v: i64| line.at(v).u;
        let flange = &post.assembly.deck_flashing;
        // Flashings at this distance from each other can't overlap, whichever way they are apart.
        let sides = [flange.width, flange.down + flange.up].map(|length| grid(length) as f64);
        let distance = math::hypot(sides[0], sides[1]).ceil() as i64;
        let (left, right) = (u_at(low).min(u_at(high)), u_at(low).max(u_at(high)));
        let posts = neighbours.between(left - distance, right + distance, index);
        let exclusion = Exclusion { posts: &posts, distance };
        let ranges = permitted_ranges(model.site, &post.assembly, &exclusion, &u_at, low, high);

        let own = grid(post.at.v);
        let rank = |(objective, by): (Objective, i64)| (objective, by.abs(), by < 0);
        let mut best: Option<(Objective, i64)> = None;
        for interval in feasible_intervals(model, &u_at, low, high) {
            for part in ranges.iter().filter_map(|&range| interval.intersection(range)) {
                for by in moves(&part, own, model.graduations.step()) {
                    let found = (interval.objective(model, line.at(own + by)), by);
                    if found.0.faults() == 0 && best.is_none_or(|best| rank(found) < rank(best)) {
                        best = Some(found);
                    }
                }
            }
        }
        best
    }
}

/// The moves by whole steps from `own` to a place in an interval that may be best: to its ends, and to the place nearest to
/// the post's own.
fn moves(interval: &FeasibleInterval, own: i64, step: i64) -> Vec<i64> {
    let (from, to) = (interval.from - own, interval.to - own);
    let (first, last) = (from.div_euclid(step) + i64::from(from.rem_euclid(step) != 0), to.div_euclid(step));
    if first > last {
        return Vec::new();
    }
    [first, 0.clamp(first, last), last].map(|steps| steps * step).to_vec()
}

/// The exposure of the course at `v`; for the top course that of the course below it.
fn exposure(site: &Site, v: i64) -> i64 {
    let noses = site.grid.noses();
    let course = site.grid.course_at(v).map_or(0, |k| k as usize).min(noses.len().saturating_sub(2));
    noses.get(course + 1).map_or(site.grid.length(), |next| next - noses[course])
}
