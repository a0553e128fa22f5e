//! The distribution of a count.
use std::fmt;

/// A probability this little below the level asked for still reaches it: a sum that is a tie on
/// paper is not decided by its last bits.
const TIE: f64 = 1e-12;
/// Weights below this part of the greatest are left out of a window.
pub(super) const TAIL: f64 = 1e-18;

/// How likely each value 0, 1, 2, … of a count is.
///
/// # How is it kept exact?
///
/// Only the window where the probabilities are not negligible is kept, dense. It is found from the
/// mode (the likeliest count): its weight is set to 1 and the others follow from the ratio of
/// neighbours, outward, so nothing underflows and no factorial is needed. The weights are then
/// divided by their sum. That is no approximation: over all counts the probabilities sum to 1, and the two
/// tails left out hold next to nothing: less than 1e-18 each of the whole where the distribution is
/// log-concave (beyond the cut it falls at least as fast as on the way to it), and less than 1e-12 where the rate is
/// a [`Rate::Beta`](super::Rate). Taking the mode's probability from log-gamma functions instead would be worse: at
/// a million tiles their difference keeps only nine digits.
///
/// # And a heavy tail?
///
/// Where a crew's record says little, the spares for cut tiles may be any number: their tail falls no faster than a
/// power of the count, and no window holds it. The window then ends where
/// [`beta_failures_before`](Self::beta_failures_before) says, its probabilities are still exact, and what lies beyond is kept as one number: [`quantile`](Self::quantile) has no answer there.
#[derive(Clone, Debug, PartialEq)]
pub struct Distribution {
    /// The count that the first probability belongs to.
    pub(super) offset: u64,
    /// Probabilities of `offset`, `offset + 1`, …; never empty.
    pub(super) pmf: Vec<f64>,
    /// Probability of all counts above the window; 0 unless the tail is heavy.
    pub(super) beyond: f64,
}

/// Why a count has no distribution that can be computed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CountError {
    /// Not a probability, or a certain breakage where a success is waited for.
    Probability(f64),
    /// So many tiles, or so much breakage, that the count spreads too wide to be tabulated.
    TooLarge,
    /// The service level lies in a tail that the crew's record says too little about.
    RecordTooShort,
}

impl fmt::Display for CountError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CountError::Probability(p) => {
                write!(f, "breakage `{p}` is not from 0 to 1, or is 1 for a tile whose spare is cut again")
            }
            CountError::TooLarge => {
                f.write_str("too many tiles, or too high a breakage, to count the spares exactly")
            }
            CountError::RecordTooShort => f.write_str(
                "so little is known of how often a cut tile breaks that no number of spares reaches the service level",
            ),
        }
    }
}

impl std::error::Error for CountError {}

impl Distribution {
    /// The count that is always `count`.
    pub fn certain(count: u64) -> Distribution {
        Distribution { offset: count, pmf: vec![1.0], beyond: 0.0 }
    }

    /// The distribution of the sum of two independent counts.
    pub fn convolve(&self, other: &Distribution) -> Distribution {
        let (long, short) =
            if self.pmf.len() < other.pmf.len() { (&other.pmf, &self.pmf) } else { (&self.pmf, &other.pmf) };
        let mut pmf = vec![0.0; long.len() + short.len() - 1];
        for (shift, a) in short.iter().enumerate() {
            for (sum, b) in pmf[shift..].iter_mut().zip(long) {
                *sum += a * b;
            }
        }
        // A sum is known as far as it can't hold a count from beyond a window.
        let known = [self, other].iter().filter(|d| d.beyond > 0.0).map(|d| d.pmf.len()).min();
        let cut_off: f64 = pmf.drain(known.unwrap_or(pmf.len())..).rev().sum();
        let beyond = self.beyond + other.beyond * (1.0 - self.beyond) + cut_off;
        // Keep the window as narrow as the sum needs, however many counts are added up.
        let least = TAIL * pmf.iter().fold(0.0_f64, |greatest, &p| greatest.max(p));
        let end = pmf.iter().rposition(|&p| p >= least).map_or(pmf.len(), |last| last + 1);
        pmf.truncate(end);
        let start = pmf.iter().position(|&p| p >= least).unwrap_or(0);
        pmf.drain(..start);
        Distribution { offset: self.offset + other.offset + start as u64, pmf, beyond }
    }

    /// `P(X = k)`.
    pub fn probability(&self, k: u64) -> f64 {
        k.checked_sub(self.offset)
            .and_then(|i| usize::try_from(i).ok())
            .and_then(|i| self.pmf.get(i))
            .map_or(0.0, |p| *p)
    }

    /// `P(X ≤ s)`; for an `s` beyond the window of a heavy tail, at least so much.
    pub fn cdf(&self, s: u64) -> f64 {
        let (up_to, _) = self.pmf.split_at(self.values_up_to(s));
        up_to.iter().sum::<f64>().min(1.0)
    }

    /// `P(X > s)`, to some 1e-18: more digits of a small chance than `1 − cdf` has. For an `s` beyond the window of
    /// a heavy tail, at most so much.
    pub fn chance_above(&self, s: u64) -> f64 {
        let (_, above) = self.pmf.split_at(self.values_up_to(s));
        (self.beyond + above.iter().rev().sum::<f64>()).min(1.0)
    }

    /// How many of the window's values are `≤ s`.
    fn values_up_to(&self, s: u64) -> usize {
        let values = s.checked_sub(self.offset).map_or(0, |i| i.saturating_add(1));
        usize::try_from(values).map_or(self.pmf.len(), |values| values.min(self.pmf.len()))
    }

    /// The least `s` with `P(X ≤ s) + 1e-12 ≥ q`; `None` where it lies beyond the window of a heavy tail. For a `q`
    /// of 1 or more, at most the window's last value.
    pub fn quantile(&self, q: f64) -> Option<u64> {
        if q <= TIE {
            return Some(0);
        }
        let mut reached = TIE;
        let reaches = |&p: &f64| {
            reached += p;
            reached >= q
        };
        let place = self.pmf.iter().position(reaches);
        let last = (self.beyond <= TIE).then_some(self.pmf.len() - 1);
        Some(self.offset + place.or(last)? as u64)
    }

    /// The mean of the count, as far as the window holds it.
    pub fn mean(&self) -> f64 {
        self.offset as f64 + self.mean_in_window()
    }

    /// The variance of the count, as far as the window holds it.
    pub fn variance(&self) -> f64 {
        let mean = self.mean_in_window();
        self.pmf.iter().zip(0u32..).map(|(p, i)| p * (f64::from(i) - mean) * (f64::from(i) - mean)).sum()
    }

    fn mean_in_window(&self) -> f64 {
        self.pmf.iter().zip(0u32..).map(|(p, i)| p * f64::from(i)).sum()
    }
}
