//! Single posts that had better stand elsewhere on their rafters.
use std::sync::Arc;

use crate::geometry::{Point, grid, to_mm};
use crate::layout::intervals::{Exclusion, permitted_ranges};
use crate::layout::intervals::{FeasibleInterval, feasible_intervals};
use crate::layout::objective::Objective;
use crate::layout::post_cost::PostCostModel;
use crate::layout::result::Nudge;
use crate::model::{Job, Post, Slope};
use crate::roof::Site;
use crate::units::{Currency, Length};

/// The posts of a job that no array with rails carries, are not fixed, and have a cheaper place along their rafters.
///
/// # Rule
///
/// A post may move by whole 1/16 in or millimetres, within the job's window (or one exposure), to where it keeps the
/// least margin, the outline, the setbacks, and its deck flashing off those of others. The best place has the least
/// score, and of equal ones is the nearest; it is told when it is better than where the post is.
pub(crate) fn nudges(job: &Job, currency: &Currency) -> Vec<Nudge> {
    let mut found = Vec::new();
    for slope in &job.slopes {
        let site = Site::of(slope, &job.practice);
        let posts = slope.posts.iter().enumerate();
        let alone = posts.filter(|(_, post)| !post.fixed && !is_carried(slope, post));
        found.extend(alone.filter_map(|(place, post)| nudge(job, &site, place, post, currency)));
    }
    found
}

fn is_carried(slope: &Slope, post: &Post) -> bool {
    slope.arrays.iter().any(|array| array.rails.is_some() && array.covers(Point::from(post.at)))
}

fn nudge(job: &Job, site: &Site, place: usize, post: &Post, currency: &Currency) -> Option<Nudge> {
    let assembly: &Arc<_> = &post.assembly;
    let model = PostCostModel::new(job, site, assembly);
    let at = Point::from(post.at);
    let work = model.work(at);
    let step = model.graduations.step();
    let window = job.practice.window.map_or_else(|| exposure(site, at.v), grid);
    // The post keeps as far from its rafter's centre line as it is.
    let rafter = site.slope.rafters.as_ref().and_then(|rafters| {
        let near =
            (0..rafters.lines.len()).min_by_key(|&i| (rafters.centre(i, post.at.v) - post.at.u).abs())?;
        Some((rafters, near, at.u - grid(rafters.centre(near, post.at.v))))
    });
    let u_at = |v: i64| match rafter {
        Some((rafters, near, off)) => grid(rafters.centre(near, Length::from_nm(v / 2))) + off,
        None => at.u,
    };
    let flange = &assembly.deck_flashing;
    let others: Vec<Point> = site.slope.posts.iter().map(|post| Point::from(post.at)).collect();
    let others: Vec<Point> = [&others[..place], &others[place + 1..]].concat();
    let tall = flange.down + flange.up;
    let least = [flange.width, tall].map(|length| grid(length) as f64);
    let exclusion =
        Exclusion { posts: &others, least: crate::num::math::hypot(least[0], least[1]).ceil() as i64 };

    let steps = window / step;
    let (low, high) = (at.v - steps * step, at.v + steps * step);
    let stretches = permitted_ranges(site, assembly, &exclusion, &u_at, low, high);
    let mut best: Option<(Objective, i64)> = None;
    for span in feasible_intervals(&model, &u_at, low, high) {
        for &(from, to) in &stretches {
            let (from, to) = (span.from.max(from), span.to.min(to));
            for by in graduations(&span, from - at.v, to - at.v, step) {
                let objective = span.objective(&model, Point::new(u_at(at.v + by), at.v + by));
                let rank = |(objective, by): (Objective, i64)| (objective, by.abs(), by < 0);
                if objective.failing + objective.narrow == 0
                    && best.is_none_or(|best| rank((objective, by)) < rank(best))
                {
                    best = Some((objective, by));
                }
            }
        }
    }
    let (objective, by) = best?;
    let base = model.base(&work);
    let now = base.money + work.patch.map_or(0, |sheet| model.patch_cost(&sheet, at));
    let fails = work.fails() || !work.is_possible();
    if !fails && objective.money >= now {
        return None;
    }
    let there = model.work(Point::new(u_at(at.v + by), at.v + by));
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
        saves: currency.nearest(Objective { money: now - objective.money, ..Objective::default() }.amount()),
    })
}

/// The moves by whole steps in a span that may be best: its ends, and the one nearest to where the post is.
fn graduations(_: &FeasibleInterval, from: i64, to: i64, step: i64) -> Vec<i64> {
    let (first, last) = (from.div_euclid(step) + i64::from(from.rem_euclid(step) != 0), to.div_euclid(step));
    if first > last {
        return Vec::new();
    }
    [first, 0.clamp(first, last), last].map(|steps| steps * step).to_vec()
}

/// The exposure of the course at `v`; of the top course that of the one below it.
fn exposure(site: &Site, v: i64) -> i64 {
    let noses = site.grid.noses();
    let course = site.grid.course_at(v).map_or(0, |k| k as usize).min(noses.len().saturating_sub(2));
    noses.get(course + 1).map_or(site.grid.length(), |next| next - noses[course])
}
