//! The objective: the value by which layouts are compared.
use std::iter::Sum;
use std::ops::Add;

/// The objective of a post, a rail or an array. Smaller is better, in lexicographic order: failing posts first, then
/// posts in narrow intervals, then money.
///
/// # Bound
///
/// Money is exact in whole millionths of the currency up to ±9.2 × 10¹² of it, and saturates there: a sum beyond the
/// bound stays at the bound and never changes its sign. [`Objective::is_saturated`] finds it.
///
/// # Example
///
/// No failing post and 1000.00 is better than one failing post and 10.00.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Objective {
    /// Posts that sever a tile or fail a check, where the job puts no price on it.
    pub(crate) failing: u32,
    /// Posts in an interval shorter than twice the least margin.
    pub(crate) narrow: u32,
    /// The additive cost, in millionths of the currency.
    pub(crate) money: i64,
}

/// Units of [`Objective::money`] in one unit of the currency.
pub(crate) const MILLION: f64 = 1e6;

impl Objective {
    /// An objective of money only, in millionths of the currency.
    pub(crate) fn from_money(money: i64) -> Objective {
        Objective { money, ..Objective::default() }
    }

    /// The objective with money added, in millionths of the currency.
    pub(crate) fn plus_money(self, money: i64) -> Objective {
        Objective { money: self.money.saturating_add(money), ..self }
    }

    /// The money, in the currency.
    pub(crate) fn amount(&self) -> f64 {
        self.money as f64 / MILLION
    }

    /// Posts that fail or are in a narrow interval.
    pub(crate) fn faults(&self) -> u32 {
        self.failing + self.narrow
    }

    /// Whether the money has reached the bound of what can be counted.
    pub(crate) fn is_saturated(&self) -> bool {
        self.money == i64::MAX || self.money == i64::MIN
    }
}

/// Money in whole millionths of the currency; beyond the bound of [`Objective`], the bound.
pub(crate) fn millionths(amount: f64) -> i64 {
    (amount * MILLION).round() as i64
}

impl Add for Objective {
    type Output = Objective;

    fn add(self, other: Objective) -> Objective {
        Objective {
            failing: self.failing + other.failing,
            narrow: self.narrow + other.narrow,
            money: self.money.saturating_add(other.money),
        }
    }
}

impl Sum for Objective {
    fn sum<I: Iterator<Item = Objective>>(objectives: I) -> Objective {
        objectives.fold(Objective::default(), Add::add)
    }
}
