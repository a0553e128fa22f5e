//! Labour by action.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::LabourLine;
use crate::model::{Action, Labour};
use crate::quantities::JobBill;
use crate::units::{Currency, Money};

/// What the count of an action counts.
fn counted(action: Action) -> &'static str {
    match action {
        Action::Lift => "tiles removed and reset, cut ones included",
        Action::Loosen => "tiles raised, not removed",
        Action::Harvest => "tiles salvaged from under the arrays as spares",
        Action::CutHole => "tiles with a hole",
        Action::CutNotch => "tiles with a notch or a corner notch",
        Action::MakeUp => "tiles replaced that can't be cut in one piece",
        Action::Patch => "felt patches",
        Action::ThreeCourse => "flashings dried in with three courses",
        Action::Block => "pieces of blocking between rafters",
        Action::Batten => "pieces of batten cut out and reset",
        Action::Set => "posts set with flashings, fasteners and sealant",
    }
}

/// The labour of a job: one line per action with a nonzero count.
///
/// Cost: `count × minutes / 60 × rate per hour`, rounded. 12 holes of 6 minutes at 68.50 an hour: 72/60 · 68.50 = 82.20.
pub(super) fn labour(labour: &Labour, currency: &Currency, bill: &JobBill) -> Option<Vec<LabourLine>> {
    let done = bill.actions.iter().filter(|(_, count)| **count > 0);
    done.map(|(&action, &count)| {
        let each = labour.minutes.of(action);
        let minutes = match each {
            Some(each) => Some(each.checked_mul(count.into())?),
            None => None,
        };
        let cost = match minutes {
            Some(minutes) => Some(cost(minutes, labour.rate_per_hour, currency)?),
            None => None,
        };
        Some(LabourLine {
            action,
            count,
            minutes_each: each.and_then(|each| each.to_f64()),
            minutes: minutes.and_then(|minutes| minutes.to_f64()),
            cost,
            basis: counted(action).to_owned(),
        })
    })
    .collect()
}

/// Cost of minutes at a rate per hour, rounded.
fn cost(minutes: Decimal, rate_per_hour: Money, currency: &Currency) -> Option<Money> {
    let sixty_times = minutes.checked_mul(rate_per_hour.amount())?;
    Some(currency.round(sixty_times.checked_div(Decimal::from(60))?))
}
