//! Totals of a job.
use crate::layout::post_cost::{Cost, additive, cost};
use crate::layout::result::{Figures, SpentOn};
use crate::model::{Job, Problems};
use crate::takeoff::Takeoff;
use crate::units::Currency;

/// The totals of a job, and its items without a price.
pub(crate) fn figures(
    job: &Job,
    taken: &Takeoff,
    currency: &Currency,
) -> Result<(Figures, Vec<String>), Problems> {
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
        boards: taken.slopes.iter().map(|slope| slope.boards().count() as u64).sum(),
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
