//! From a job to its layout, and why that is the one.
use std::collections::BTreeMap;

use super::apply::{applied, unused_names};
use super::clash::no_layout;
use super::cost::{Cost, additive, cost};
use super::foot::Foot;
use super::lay::{Laid, Wanted, is_replaced, lay, posts_of};
use super::nudge::nudges;
use super::result::{
    ArrayLayout, Constraint, ConstraintPrice, Figures, Layout, RailLayout, RailPost, RunnerUp, SpentOn,
    Unmoved,
};
use super::score::Score;
use super::settle::Placed;
use crate::geometry::{Point, grid, to_mm};
use crate::model::{Array, Code, Display, Job, Problem, Problems, Severity, Slope};
use crate::slope_takeoff::PostTakeoff;
use crate::takeoff::{LAYOUT_CAUTION, Takeoff, takeoff};
use crate::units::{Currency, Length};

/// A layout, and the job as it lays it out.
#[derive(Clone, Debug)]
pub struct LaidOut {
    /// What is where, and why.
    pub layout: Layout,
    /// The job with its arrays and posts there.
    pub job: Job,
}

/// Places the arrays of a job that have rails, their rails and their posts where the additive cost is least.
///
/// # Rule
///
/// The additive cost is the sum over the posts of what each costs by itself ([`additive`]). Least are first the posts
/// that sever a tile or fail a check, then those in an interval shorter than twice the least margin, then the cost. Of
/// equal layouts it is the one with the largest margin, then the lowest.
///
/// # Errors
///
/// `no-rails` where there is nothing to lay out; `no-costs` where nothing has a price; `no-layout` with the smallest set
/// of constraints that clash, and what would have to give; what the takeoff of the laid job refuses.
pub fn layout(job: &Job) -> Result<LaidOut, Problems> {
    let currency = currency_of(job)?;
    let wanted = Wanted { map: true };
    let laid = lay(job, wanted).map_err(|none| Problems::from(no_layout(job, none)))?;
    let laid_job = applied(job, &laid);
    let findings = super::check(job, &laid_job);
    if findings.iter().any(|problem| problem.severity == Severity::Error) {
        return Err(findings.into());
    }
    let replaces = job.slopes.iter().any(|slope| slope.posts.iter().any(|post| is_replaced(slope, post)));
    let before = if replaces { Some(figures(job, &takeoff(job)?, currency)?.0) } else { None };
    let taken = takeoff(&laid_job)?;
    let (after, unpriced) = figures(&laid_job, &taken, currency)?;
    let layout = Layout {
        format: "tilepost-layout/1".to_owned(),
        job: job.name.clone(),
        display: job.display,
        currency: currency.code().to_owned(),
        before,
        before_breaks: if replaces { super::check(job, job) } else { Vec::new() },
        after,
        arrays: laid.iter().map(|laid| array_layout(job, laid, &taken, currency)).collect(),
        constraints: constraint_prices(job, &laid, currency),
        nudges: nudges(&laid_job, currency),
        unpriced,
        findings,
        cautions: [LAYOUT_CAUTION.to_owned()].into_iter().chain(taken.cautions).collect(),
    };
    Ok(LaidOut { layout, job: laid_job })
}

/// The job as [`layout`] lays it out, without the reasons.
///
/// # Errors
///
/// `no-rails`, `no-costs` and `no-layout`, as there.
pub fn lay_out(job: &Job) -> Result<Job, Problems> {
    currency_of(job)?;
    let laid = lay(job, Wanted::default()).map_err(|none| Problems::from(no_layout(job, none)))?;
    Ok(applied(job, &laid))
}

/// What the costs are in, where there is something to lay out and something to weigh places by.
fn currency_of(job: &Job) -> Result<&Currency, Problems> {
    let has_rails = job.slopes.iter().flat_map(|slope| &slope.arrays).any(|array| array.rails.is_some());
    let has_posts = job.slopes.iter().any(|slope| !slope.posts.is_empty());
    if !has_rails && !has_posts {
        let message = "no array has rails, and there is no post: there is nothing to lay out";
        let help = "give `rails` to the arrays that posts are to be placed for";
        return Err(Problems::from(Problem::new(Code::NoRails, message, help, "")));
    }
    if let Some(array) = too_large(job) {
        let message = format!("the array `{array}` has too many rails, rafters and courses to look at");
        let help = "allow less shift, or make several arrays or slopes of it";
        return Err(Problems::from(Problem::new(Code::TooMany, message, help, "")));
    }
    job.bid.as_ref().map(|terms| &terms.currency).ok_or_else(|| {
        let message = "the job has neither prices nor labour: there is nothing to weigh places by";
        let help = "give `prices`, or `labour` with its rate and minutes in `bid`";
        Problems::from(Problem::new(Code::NoCosts, message, help, ""))
    })
}

/// The first array with more courses to look at, over all of its rails and rafters, than would be done in a minute or so.
fn too_large(job: &Job) -> Option<&str> {
    let looks = |slope: &Slope, array: &Array| {
        let rails = array.rails.as_ref()?;
        let rafters = slope.rafters.as_ref()?.lines.len();
        let window = rails.clamps.iter().map(|window| grid(window.to - window.from)).max()?;
        let reach = window + grid(array.shift.down + array.shift.up);
        let exposures = slope.noses.windows(2).map(|pair| grid(pair[1] - pair[0]));
        let courses = 2 + reach / exposures.min().unwrap_or(reach).max(1);
        let rails = rails.clamps.len() as f64 * f64::from(array.rows);
        Some(rails * rafters as f64 * courses as f64)
    };
    job.slopes.iter().find_map(|slope| {
        let large = |array: &&Array| looks(slope, array).is_some_and(|looks| looks > MOST_LOOKS);
        slope.arrays.iter().find(large).map(|array| array.name.as_str())
    })
}

/// Rails × rafters × courses of one array.
const MOST_LOOKS: f64 = 1e6;

/// The totals of a job, and what has no price in it.
fn figures(job: &Job, taken: &Takeoff, currency: &Currency) -> Result<(Figures, Vec<String>), Problems> {
    let shared = cost(job, taken)?;
    let each = additive(job)?;
    let counts = &taken.counts;
    let figures = Figures {
        posts: counts.posts,
        holes: counts.holes,
        notches: counts.notches,
        corners: counts.corners,
        severed: counts.severed,
        patches: counts.patches,
        removed: counts.removed,
        loosened: counts.loosened,
        boards: taken.slopes.iter().map(|slope| slope.blocking.len() as u64).sum(),
        additive_cost: currency.nearest(each.total()),
        spent_on: spent_on(&each, currency),
        shared_cost: currency.nearest(shared.total()),
        gap: currency.nearest(each.total() - shared.total()),
        price: taken.bid.as_ref().map(|bid| bid.totals.price),
    };
    Ok((figures, shared.unpriced.into_iter().collect()))
}

fn spent_on(cost: &Cost, currency: &Currency) -> SpentOn {
    let amount = |amount: f64| currency.nearest(amount);
    SpentOn {
        hardware: amount(cost.hardware),
        labour: amount(cost.labour),
        patches: amount(cost.patches),
        blocking: amount(cost.blocking),
        breakage: amount(cost.breakage),
    }
}

fn array_layout(job: &Job, laid: &Laid, taken: &Takeoff, currency: &Currency) -> ArrayLayout {
    let slope = &job.slopes[laid.slope];
    let array = &slope.arrays[laid.array];
    let own = Point::from(array.at);
    let Placed { score, at, rails, spare_margin } = &laid.placed;
    let amount = |score: &Score| currency.nearest(score.amount());
    let windows = array.rails.as_ref().map_or(0, |rails| rails.clamps.len()).max(1);
    let pitch = grid(array.module_height + array.row_gap);
    let names = unused_names(slope, &array.name, rails);
    let of_slope = &taken.slopes[laid.slope].posts;
    let works: BTreeMap<&str, &PostTakeoff> =
        of_slope.iter().map(|post| (post.name.as_str(), post)).collect();
    let rail_layouts = rails.iter().zip(names).enumerate().map(|(number, (rail, names))| RailLayout {
        rail: number as u64 + 1,
        v_mm: to_mm(rail.v),
        clamp_mm: to_mm(rail.v - at.v - (number / windows) as i64 * pitch),
        additive_cost: amount(&rail.score),
        posts: rail
            .posts
            .iter()
            .zip(names)
            .filter_map(|(&(foot, u), name)| {
                let work = works.get(name.as_str())?;
                Some(RailPost {
                    u_mm: to_mm(u),
                    rafter: foot.number().map(|rafter| rafter as u64 + 1),
                    on_board: matches!(foot, Foot::Bay(_)),
                    situation: work.situation,
                    method: work.deck.method,
                    name,
                })
            })
            .collect(),
    });
    let runner_up = |placed: &Placed| RunnerUp {
        right_mm: to_mm(placed.at.u - own.u),
        up_mm: to_mm(placed.at.v - own.v),
        rails_v_mm: placed.rails.iter().map(|rail| to_mm(rail.v)).collect(),
        posts: posts_of(placed).len() as u64,
        additive_cost: amount(&placed.score),
        more: currency.nearest(placed.score.amount() - score.amount()),
        failing: placed.score.failing,
        thin: placed.score.thin,
    };
    ArrayLayout {
        slope: slope.name.clone(),
        array: array.name.clone(),
        right_mm: to_mm(at.u - own.u),
        up_mm: to_mm(at.v - own.v),
        u_mm: to_mm(at.u),
        v_mm: to_mm(at.v),
        rails: rail_layouts.collect(),
        additive_cost: amount(score),
        failing: score.failing,
        thin: score.thin,
        least_margin_mm: job.practice.least_margin.mm() + to_mm(*spare_margin),
        unmoved: laid.unmoved.as_ref().map(|score| Unmoved {
            additive_cost: amount(score),
            failing: score.failing,
            thin: score.thin,
        }),
        yielded: laid.yielded,
        runners_up: laid.runners_up.iter().map(runner_up).collect(),
        map: laid.map.clone(),
    }
}

/// What each constraint costs: an inch more or less of it (25 mm where the job is shown in metric units), or none.
fn constraint_prices(job: &Job, laid: &[Laid], currency: &Currency) -> Vec<ConstraintPrice> {
    let by = match job.display {
        Display::Imperial => Length::INCH,
        Display::Metric => Length::from_nm(25 * Length::MM.nm()),
    };
    let sum = |laid: &[Laid]| laid.iter().map(|laid| laid.placed.score).sum::<Score>();
    let now = sum(laid);
    let price = |constraint: Constraint| {
        let eased = lay(&constraint.eased(job, by)?, Wanted::default()).ok()?;
        let then = sum(&eased);
        Some(ConstraintPrice {
            constraint,
            by_mm: constraint.is_length().then_some(by.mm()),
            saves: currency.nearest(now.amount() - then.amount()),
            fewer_faults: i64::from(now.failing + now.thin) - i64::from(then.failing + then.thin),
        })
    };
    Constraint::ALL.into_iter().filter_map(price).collect()
}
