//! Labour by action.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::LabourLine;
use crate::model::{Action, Labour};
use crate::quantities::Counts;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::{Currency, Money};

/// How often each action is done, and what was counted.
pub(crate) fn counted(counts: &Counts, slopes: &[SlopeTakeoff]) -> [(Action, u64, &'static str); 11] {
    let blocks = slopes.iter().map(|slope| slope.boards().count() as u64).sum();
    let battens = slopes.iter().map(|slope| slope.battens.len() as u64).sum();
    [
        (Action::Lift, counts.removed, "tiles taken up and laid back, cut ones included"),
        (Action::Loosen, counts.loosened, "tiles loosened in place"),
        (Action::Harvest, counts.harvested, "tiles taken from under the arrays, to be spares"),
        (Action::CutHole, counts.holes, "tiles with a hole"),
        (Action::CutNotch, counts.notches + counts.corners, "tiles with a notch or a corner off"),
        (Action::MakeUp, counts.severed, "severed tiles made up from new ones"),
        (Action::Patch, counts.patches, "felt patches"),
        (Action::ThreeCourse, counts.three_course, "flashings dried in with three courses"),
        (Action::Block, blocks, "blocking boards between rafters"),
        (Action::Batten, battens, "pieces of batten cut out and reset"),
        (Action::Set, counts.posts, "posts set with flashings, fasteners and sealant"),
    ]
}

/// The labour of a job: a line an action that there is any of.
///
/// Cost: `count × minutes / 60 × rate per hour`, rounded. 12 holes of 6 minutes at 68.50 an hour: 72/60 · 68.50 = 82.20.
pub(super) fn labour(
    labour: &Labour,
    currency: &Currency,
    counts: &Counts,
    slopes: &[SlopeTakeoff],
) -> Option<Vec<LabourLine>> {
    let done = counted(counts, slopes).into_iter().filter(|(_, count, _)| *count > 0);
    done.map(|(action, count, basis)| {
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
            basis: basis.to_owned(),
        })
    })
    .collect()
}

/// What so many minutes cost.
fn cost(minutes: Decimal, rate_per_hour: Money, currency: &Currency) -> Option<Money> {
    let sixty_times = minutes.checked_mul(rate_per_hour.amount())?;
    Some(currency.round(sixty_times.checked_div(Decimal::from(60))?))
}
