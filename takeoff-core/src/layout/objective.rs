//! What layouts are compared by.
use std::iter::Sum;
use std::ops::Add;

/// What a post, a rail or an array takes. Smaller is better: first the failing posts, then the thin ones, then money.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Objective {
    /// Posts that sever a tile or fail a check, where the job puts no price on it.
    pub(crate) failing: u32,
    /// Posts in an interval shorter than twice the least margin.
    pub(crate) narrow: u32,
    /// The additive cost, in millionths of the currency.
    pub(crate) money: i64,
}

/// So many of the score's units of money are one of the currency.
pub(crate) const MILLION: f64 = 1e6;

impl Objective {
    /// In the currency.
    pub(crate) fn amount(&self) -> f64 {
        self.money as f64 / MILLION
    }
}

impl Add for Objective {
    type Output = Objective;

    fn add(self, other: Objective) -> Objective {
        Objective {
            failing: self.failing + other.failing,
            narrow: self.narrow + other.narrow,
            money: self.money + other.money,
        }
    }
}

impl Sum for Objective {
    fn sum<I: Iterator<Item = Objective>>(objectives: I) -> Objective {
        objectives.fold(Objective::default(), Add::add)
    }
}
