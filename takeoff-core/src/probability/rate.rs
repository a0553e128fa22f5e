//! Rate at which tiles of one class break.
use std::fmt;

use schemars::JsonSchema;
use serde::Serialize;

use super::distribution::{CountError, Distribution};

/// How often a tile of one class breaks: as the job states it, or as a crew's record teaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum Rate {
    /// A probability, taken as known.
    Known(f64),
    /// Not known, but Beta(α, β): as though α tiles had broken and β stayed whole.
    Beta {
        /// Broken.
        alpha: f64,
        /// Whole.
        beta: f64,
    },
}

/// A crew's record of one class.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// Tiles handled.
    pub handled: u64,
    /// How many of them broke.
    pub broken: u64,
}

/// Reason why a record makes no rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RecordError {
    /// More tiles broken than handled.
    MoreBrokenThanHandled,
    /// Without a stated rate of some weight, a record of tiles all broken, all whole, or none.
    SaysNothing,
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            RecordError::MoreBrokenThanHandled => "more tiles are broken than were handled",
            RecordError::SaysNothing => {
                "with a weight of 0 the record alone makes the rate: it needs broken tiles and whole ones"
            }
        })
    }
}

impl std::error::Error for RecordError {}

impl Rate {
    /// Posterior of the stated rate `p`, weighed like `weight` tiles that were handled, together with a record: Beta(α, β) with
    /// `α = weight · p + broken` and `β = weight · (1 − p) + handled − broken`, the conjugate prior's update. A rate
    /// that is stated as 0 and never was otherwise stays 0; one below 1e-100 is too small to be told from that.
    ///
    /// # Errors
    ///
    /// More tiles are broken than handled, or the weight is 0 and not both broken and whole tiles are on record.
    ///
    /// # Source
    ///
    /// Beta prior for a binomial probability, with its parameters as a prior count of failures and successes: textbook
    /// statistics, for example NIST/SEMATECH e-Handbook of Statistical Methods on Bayesian methods (from memory).
    ///
    /// # Example
    ///
    /// Stated 6 %, weighed like 50 tiles; on record 2 of 150 broken: 3 + 2 broken, 47 + 148 whole.
    ///
    /// ```
    /// use takeoff_core::probability::{Rate, Record};
    /// let rate = Rate::posterior(0.06, 50, Record { handled: 150, broken: 2 })?;
    /// assert_eq!(rate, Rate::Beta { alpha: 5.0, beta: 195.0 });
    /// assert_eq!(rate.mean(), 0.025);
    /// # Ok::<(), takeoff_core::probability::RecordError>(())
    /// ```
    pub fn posterior(p: f64, weight: u64, record: Record) -> Result<Rate, RecordError> {
        let whole = record.handled.checked_sub(record.broken).ok_or(RecordError::MoreBrokenThanHandled)?;
        if weight == 0 && (record.broken == 0 || whole == 0) {
            return Err(RecordError::SaysNothing);
        }
        let alpha = weight as f64 * p + record.broken as f64;
        let beta = weight as f64 * (1.0 - p) + whole as f64;
        Ok(if alpha < 1e-100 { Rate::Known(0.0) } else { Rate::Beta { alpha, beta } })
    }

    /// The probability that one tile breaks: `p`, or `α/(α + β)`.
    pub fn mean(self) -> f64 {
        match self {
            Rate::Known(p) => p,
            Rate::Beta { alpha, beta } => alpha / (alpha + beta),
        }
    }

    /// Distribution of the number of `n` tiles that break.
    pub(crate) fn broken(self, n: u64) -> Result<Distribution, CountError> {
        match self {
            Rate::Known(p) => Distribution::binomial(n, p),
            Rate::Beta { alpha, beta } => Distribution::beta_binomial(n, alpha, beta),
        }
    }

    /// Distribution of the number that break before the `n`-th is cut whole.
    pub(crate) fn broken_before(self, n: u64) -> Result<Distribution, CountError> {
        match self {
            Rate::Known(p) => Distribution::failures_before(n, p),
            Rate::Beta { alpha, beta } => Distribution::beta_failures_before(n, alpha, beta),
        }
    }

    /// Mean of [`broken`](Self::broken): `n p`, with the mean rate for `p`.
    pub(crate) fn mean_broken(self, n: u64) -> f64 {
        n as f64 * self.mean()
    }

    /// Mean of [`broken_before`](Self::broken_before), `n p/(1 − p)` or `n α/(β − 1)`; there is none where β is not above 1.
    pub(crate) fn mean_broken_before(self, n: u64) -> Option<f64> {
        let odds = match self {
            _ if n == 0 => 0.0,
            Rate::Known(p) => p / (1.0 - p),
            Rate::Beta { beta, .. } if beta <= 1.0 => return None,
            Rate::Beta { alpha, beta } => alpha / (beta - 1.0),
        };
        Some(n as f64 * odds)
    }
}
