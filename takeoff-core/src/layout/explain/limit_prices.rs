//! The price of each limit: the saving from relaxing it alone.
use crate::layout::objective::Objective;
use crate::layout::result::{Constraint, ConstraintPrice};
use crate::layout::solve::{Detail, SolvedArray, solve};
use crate::model::{Display, Job};
use crate::units::{Currency, Length};

/// The price of each limit in force: the difference of two layouts, one with an inch more or less of it (25 mm in a job
/// shown in metric units), or without it if it is no length.
pub(crate) fn limit_prices(job: &Job, solved: &[SolvedArray], currency: &Currency) -> Vec<ConstraintPrice> {
    let by = match job.display {
        Display::Imperial => Length::INCH,
        Display::Metric => Length::from_nm(25 * Length::MM.nm()),
    };
    let now = total(solved);
    let price = |limit: Constraint| {
        let relaxed = total(&solve(&limit.relaxed(job, by)?, Detail::Placement).ok()?);
        Some(ConstraintPrice {
            constraint: limit,
            by_mm: limit.is_length().then_some(by.mm()),
            saves: currency.nearest(now.amount() - relaxed.amount()),
            fewer_faults: i64::from(now.faults()) - i64::from(relaxed.faults()),
        })
    };
    Constraint::ALL.into_iter().filter_map(price).collect()
}

fn total(solved: &[SolvedArray]) -> Objective {
    solved.iter().map(|solved| solved.placement.objective).sum()
}
