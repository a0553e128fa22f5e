//! Spares to buy for the tiles handled.
use schemars::JsonSchema;
use serde::Serialize;

use crate::model::Breakage;
use crate::probability::{CountError, Distribution, Rate, least_cost};

/// Numbers of tiles of one kind that are handled, each in the first class that holds for it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Handled {
    /// Left without a sound piece: made up from new tiles, no trial.
    pub severed: u64,
    /// Given a hole, a notch or a cut corner.
    pub cut: u64,
    /// Taken up and laid back.
    pub removed: u64,
    /// Lifted, not taken up.
    pub loosened: u64,
    /// Walked on.
    pub walked: u64,
}

/// Demand of one job for spares of one kind of tile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// The tiles handled.
    pub handled: Handled,
    /// Rates at which they break.
    pub breakage: Breakage,
    /// New tiles that the piece for one severed tile is made up from; 2 as a rule.
    pub pieces_for_severed: u64,
    /// Tiles of this kind already on hand.
    pub on_hand: u64,
    /// Sound tiles that the crew takes from under its arrays.
    pub harvested: u64,
}

/// The spares of one tile kind, and how they were derived.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Spares {
    /// Spares that breakage does not exceed, with the service level's probability.
    pub used_at_level: u64,
    /// New tiles for the severed ones.
    pub for_severed: u64,
    /// Tiles already on hand.
    pub on_hand: u64,
    /// Tiles taken from under an array.
    pub harvested: u64,
    /// Tiles to buy: `used_at_level + for_severed − on_hand − harvested`, never below 0.
    pub spares: u64,
    /// The mean number of spares that breakage uses, pieces for severed tiles not counted; `None` where the crew's
    /// record says so little of cut tiles that there is no mean.
    pub expected: Option<f64>,
    /// The probability that the tiles bought, on hand and harvested are not enough.
    #[serde(rename = "chance_short")]
    pub stockout_probability: f64,
    /// The same for other numbers of tiles bought, ascending: from almost certain shortage to almost none.
    pub alternatives: Vec<Alternative>,
    /// The distribution of the spares that breakage uses.
    #[serde(skip)]
    pub distribution: Distribution,
}

/// Another number of tiles that could be bought.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Alternative {
    /// Tiles bought.
    pub spares: u64,
    /// The probability that these, those on hand and those harvested are not enough.
    #[serde(rename = "chance_short")]
    pub stockout_probability: f64,
}

/// How far the alternatives reach to either side of the number to buy, at least.
const REACH: u64 = 2;
/// They reach from where the chance of running short is 1 less this, to where it is this.
const NEXT_TO_NONE: f64 = 0.001;
/// Most steps from one end of the alternatives to the other; a longer range takes larger steps.
const STEPS: u64 = 400;

/// A class of tiles with one rate, over all jobs: where the rate is uncertain, it is the same unknown rate for all of
/// them.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Class {
    operation: Operation,
    rate: Rate,
}

/// Operation on the tiles of a class.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Operation {
    /// Cut, and a spare is cut until it stays whole.
    CutUntilWhole,
    /// Cut once.
    Cut,
    Removed,
    Loosened,
    Walked,
}

impl Class {
    fn used(self, n: u64) -> Result<Distribution, CountError> {
        if self.operation == Operation::CutUntilWhole {
            self.rate.broken_before(n)
        } else {
            self.rate.broken(n)
        }
    }

    fn expected(self, n: u64) -> Option<f64> {
        let until_whole = self.operation == Operation::CutUntilWhole;
        if until_whole { self.rate.mean_broken_before(n) } else { Some(self.rate.mean_broken(n)) }
    }
}

/// Classes of the tiles of all jobs, each with its number of tiles.
fn classes(jobs: &[Demand]) -> Vec<(Class, u64)> {
    let mut classes: Vec<(Class, u64)> = Vec::new();
    for Demand { handled, breakage, .. } in jobs {
        let cut = if breakage.recut { Operation::CutUntilWhole } else { Operation::Cut };
        for (operation, rate, n) in [
            (cut, breakage.cut, handled.cut),
            (Operation::Removed, breakage.removed, handled.removed),
            (Operation::Loosened, breakage.loosened, handled.loosened),
            (Operation::Walked, breakage.walked, handled.walked),
        ] {
            let class = Class { operation, rate };
            match classes.iter_mut().find(|(known, _)| *known == class) {
                Some((_, count)) => *count = count.saturating_add(n),
                None => classes.push((class, n)),
            }
        }
    }
    classes
}

/// The distribution of the spares of one tile kind that breakage uses on some jobs: the sum over the classes.
///
/// Removed, loosened and walked tiles break or not, once: binomial. A spare for a cut tile is cut
/// too, so that the cut tiles use as many spares as fail before the last is whole: negative
/// binomial, or else, without recutting, binomial as well. Severed tiles are no trial.
///
/// Where a rate is known from a crew's record only, the class has one predictive distribution of the count summed over
/// the jobs with that record (beta-binomial, beta negative binomial): a crew that breaks much on one job does so
/// on the next. Classes are independent of each other, and so are the same class with two different rates.
///
/// # Errors
///
/// Those of [`Distribution::binomial`], [`Distribution::failures_before`] and their kin for records.
pub fn used(jobs: &[Demand]) -> Result<Distribution, CountError> {
    classes(jobs)
        .into_iter()
        .try_fold(Distribution::certain(0), |sum, (class, n)| Ok(sum.convolve(&class.used(n)?)))
}

/// The mean of [`used`], the sum of the classes' means; `None` where one has none.
pub fn expected(jobs: &[Demand]) -> Option<f64> {
    classes(jobs).into_iter().map(|(class, n)| class.expected(n)).sum()
}

/// The spares of one tile kind for a pool of jobs, which may be one job: the least `s` with
/// `P(X ≤ s) ≥ service level`, where `X` is the number of spares [`used`] on all of them, plus the pieces for severed
/// tiles, less the tiles on hand and those harvested, never below 0.
///
/// # Errors
///
/// A breakage is no probability, the counts are too large for an exact distribution, or the crew's record is too short
/// for the service level.
///
/// # Example
///
/// Ten tiles are taken up, one in ten breaks. None breaks with 0.9^10 = 0.349, one with
/// 10 · 0.1 · 0.9^9 = 0.387, two with 45 · 0.01 · 0.9^8 = 0.194: two spares are enough with 0.930.
/// One more tile is severed and takes two new ones; one tile is on hand.
///
/// ```
/// use takeoff_core::model::Breakage;
/// use takeoff_core::probability::Rate;
/// use takeoff_core::spares::{pooled, Demand, Handled};
/// let none = Rate::Known(0.0);
/// let breakage = Breakage { cut: none, removed: Rate::Known(0.1), loosened: none, walked: none, recut: true };
/// let handled = Handled { removed: 10, severed: 1, ..Handled::default() };
/// let job = Demand { handled, breakage, pieces_for_severed: 2, on_hand: 1, harvested: 0 };
/// let spares = pooled(&[job], 0.9)?;
/// assert_eq!(spares.used_at_level, 2);
/// assert_eq!(spares.spares, 2 + 2 - 1);
/// assert!((spares.stockout_probability - (1.0 - 0.930)).abs() < 0.001);
///
/// // Two such jobs pooled: P(X ≤ 3) of 20 tiles is 0.867, P(X ≤ 4) 0.957; and here 4 is what two jobs need apart.
/// assert_eq!(pooled(&[job, job], 0.9)?.used_at_level, 4);
/// // Four: P(X ≤ 6) of 40 tiles is 0.9005: 6, where four jobs apart need 8.
/// assert_eq!(pooled(&[job; 4], 0.9)?.used_at_level, 6);
/// # Ok::<(), takeoff_core::probability::CountError>(())
/// ```
pub fn pooled(jobs: &[Demand], service_level: f64) -> Result<Spares, CountError> {
    let distribution = used(jobs)?;
    let sum = |count: fn(&Demand) -> Option<u64>| {
        jobs.iter().try_fold(0_u64, |sum, job| sum.checked_add(count(job)?)).ok_or(CountError::TooLarge)
    };
    let mut spares = Spares {
        used_at_level: distribution.quantile(service_level).ok_or(CountError::RecordTooShort)?,
        for_severed: sum(|job| job.handled.severed.checked_mul(job.pieces_for_severed))?,
        on_hand: sum(|job| Some(job.on_hand))?,
        harvested: sum(|job| Some(job.harvested))?,
        spares: 0,
        expected: expected(jobs),
        stockout_probability: 0.0,
        alternatives: Vec::new(),
        distribution,
    };
    spares.spares = spares.to_buy(spares.used_at_level);
    spares.stockout_probability = spares.stockout_probability_with(spares.spares);
    spares.alternatives = spares.range();
    Ok(spares)
}

impl Spares {
    /// Tiles to buy so that there are this many for breakage.
    pub fn to_buy(&self, for_breakage: u64) -> u64 {
        let free = self.on_hand.saturating_add(self.harvested);
        for_breakage.saturating_add(self.for_severed).saturating_sub(free)
    }

    /// The probability that so many tiles bought, with those on hand and harvested, are not enough.
    pub fn stockout_probability_with(&self, bought: u64) -> f64 {
        let all = bought.saturating_add(self.on_hand).saturating_add(self.harvested);
        all.checked_sub(self.for_severed).map_or(1.0, |left| self.distribution.chance_above(left))
    }

    /// Tiles to buy at the least expected cost, by the cost of one over the cost of a tile short: [`least_cost`].
    /// Pieces for severed tiles are bought in any case.
    pub fn to_buy_at_least_cost(&self, cost_ratio: f64) -> Option<u64> {
        least_cost(&self.distribution, cost_ratio).map(|for_breakage| self.to_buy(for_breakage))
    }

    /// Numbers of tiles from almost certain shortage to almost none.
    fn range(&self) -> Vec<Alternative> {
        let end = |q| self.distribution.quantile(q).map(|for_breakage| self.to_buy(for_breakage));
        let first = end(NEXT_TO_NONE).unwrap_or(0).min(self.spares.saturating_sub(REACH));
        let next_ones = self.spares.saturating_add(REACH);
        let last = end(1.0 - NEXT_TO_NONE).unwrap_or(next_ones).max(next_ones);
        let step = (last - first).div_ceil(STEPS).max(1);
        // The number to buy is among them, whatever the step.
        let from = first + (self.spares - first) % step;
        (from..=last)
            .step_by(usize::try_from(step).unwrap_or(usize::MAX))
            .map(|spares| Alternative {
                spares,
                stockout_probability: self.stockout_probability_with(spares),
            })
            .collect()
    }
}
