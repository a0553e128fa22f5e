//! From a job to its layout, step by step.
use super::check::check;
use super::explain::{array_layout, figures, infeasibility, limit_prices, nudges};
use super::laid_job::apply;
use super::preconditions::currency_of;
use super::replaced::is_replaced;
use super::result::Layout;
use super::solve::{Detail, SolvedArray, solve};
use crate::model::{Code, Problems};
use crate::model::{Job, Problem, Severity};
use crate::takeoff::{LAYOUT_CAUTION, takeoff};
use crate::units::Currency;

/// A layout, and the laid-out job.
#[derive(Clone, Debug)]
pub struct LaidOut {
    /// Places of arrays, rails and posts, and the reasons for them.
    pub layout: Layout,
    /// The job with its arrays and posts at these places.
    pub job: Job,
}

/// Places the arrays of a job that have rails, their rails and their posts at the least additive cost.
///
/// # Rule
///
/// The objective is lexicographic: posts that sever a tile or fail a check first, then posts in an interval shorter than
/// twice the least margin, then the [`additive`](super::additive) cost. Among layouts of equal objective the one with the
/// largest margin wins, then the lowest.
///
/// # Errors
///
/// `no-rails` with nothing to lay out; `too-many` for an array beyond the size of a search; `no-costs` without prices and
/// labour; `no-layout` with an irreducible infeasible set of limits and the least relaxation of each; `too-much-money` for
/// costs beyond the supported range; the errors of the takeoff of the laid-out job.
pub fn layout(job: &Job) -> Result<LaidOut, Problems> {
    let currency = currency_of(job)?;
    let solved = solved(job, Detail::Elsewhere, currency)?;
    let laid_job = apply(job, &solved);
    let findings = check(job, &laid_job);
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
        before_breaks: if replaces { check(job, job) } else { Vec::new() },
        after,
        arrays: solved.iter().map(|solved| array_layout(job, solved, &taken, currency)).collect(),
        constraints: limit_prices(job, &solved, currency),
        nudges: nudges(&laid_job, currency),
        unpriced,
        findings,
        cautions: [LAYOUT_CAUTION.to_owned()].into_iter().chain(taken.cautions).collect(),
    };
    Ok(LaidOut { layout, job: laid_job })
}

/// The laid-out job of [`layout`] alone, without its reasons.
///
/// # Errors
///
/// `no-rails`, `too-many`, `no-costs`, `no-layout` and `too-much-money`, as there.
pub fn place_posts(job: &Job) -> Result<Job, Problems> {
    let currency = currency_of(job)?;
    Ok(apply(job, &solved(job, Detail::Placement, currency)?))
}

/// The solution, or the reason that there is none.
fn solved(job: &Job, detail: Detail, currency: &Currency) -> Result<Vec<SolvedArray>, Problems> {
    let solved = solve(job, detail).map_err(|infeasible| vec![infeasibility(job, infeasible)])?;
    match solved.iter().find(|solved| solved.placement.objective.is_saturated()) {
        Some(solved) => Err(too_much_money(job, solved, currency).into()),
        None => Ok(solved),
    }
}

/// The problem of an array whose cost is beyond the bound of the objective.
fn too_much_money(job: &Job, solved: &SolvedArray, currency: &Currency) -> Problem {
    let array = &job.slopes[solved.slope].arrays[solved.array];
    let message =
        format!("the posts of the array `{}` cost more than 9.2 × 10¹² {}", array.name, currency.code());
    let path = format!("/slopes/{}/arrays/{}", solved.slope, solved.array);
    Problem::new(Code::TooMuchMoney, message, "look at the prices and at the labour rate", path)
}
