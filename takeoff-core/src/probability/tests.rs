//! Distributions against published values, reference libraries and their own laws.
mod least_cost;
mod predictive;

use super::*;
use proptest::prelude::*;
use statrs::distribution::{Binomial, DiscreteCDF, NegativeBinomial};

pub(crate) fn binomial(n: u64, p: f64) -> Distribution {
    Distribution::binomial(n, p).unwrap()
}
pub(crate) fn failures_before(n: u64, p: f64) -> Distribution {
    Distribution::failures_before(n, p).unwrap()
}
/// The whole window.
fn values(d: &Distribution) -> impl Iterator<Item = (u64, f64)> {
    let middle = d.quantile(0.5).unwrap();
    let first = (0..middle).rev().take_while(|&k| d.probability(k) > 0.0).last().unwrap_or(middle);
    (first..=d.quantile(2.0).unwrap()).map(|k| (k, d.probability(k)))
}
pub(crate) fn assert_near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got} is not within {tolerance} of {want}");
}

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.2.3.2: operating characteristic of the
// sampling plan n = 52, c = 3 (lots accepted at 1 to 12 % defective), three digits. From memory, two
// entries (4 and 5 %: .845 and .739 recalled) corrected to what scipy computes.
#[test]
fn operating_characteristic_of_a_published_sampling_plan() {
    let accepted = [0.998, 0.980, 0.930, 0.846, 0.738, 0.620, 0.502, 0.394, 0.300, 0.223, 0.162, 0.115];
    for (percent, want) in (1..=12).zip(accepted) {
        assert_near(binomial(52, f64::from(percent) / 100.0).cdf(3), want, 0.000_5);
    }
}

// Outputs printed in the public manuals of two acceptance-sampling packages.
#[test]
fn published_acceptance_probabilities() {
    assert_near(binomial(125, 0.1).cdf(2), 0.000_210_835, 5e-10);
    assert_near(binomial(65, 0.012).cdf(2), 0.956_439_8, 5e-8);
}

// Computed with scipy.stats.binom (ppf, cdf).
#[test]
fn quantiles_that_scipy_gives() {
    let cases = [
        (100, 0.05, 0.95, 9, 0.97181),
        (40, 0.03, 0.90, 3, 0.96860),
        (60, 0.05, 0.95, 6, 0.97031),
        (24, 0.10, 0.90, 4, 0.91493),
        (200, 0.02, 0.99, 9, 0.99252),
    ];
    for (n, p, q, s, reached) in cases {
        let d = binomial(n, p);
        assert_eq!(d.quantile(q), Some(s), "n = {n}, p = {p}, q = {q}");
        assert_near(d.cdf(s), reached, 5e-6);
    }
}

#[test]
fn a_tie_needs_no_further_spare() {
    // One tile: whole with exactly 0.95. Three of four outcomes, and so on.
    assert_eq!(binomial(1, 0.05).quantile(0.95), Some(0));
    assert_eq!(failures_before(1, 0.05).quantile(0.95), Some(0));
    assert_eq!(binomial(2, 0.5).quantile(0.75), Some(1));
    assert_eq!(failures_before(1, 0.1).quantile(0.999), Some(2));
    assert_eq!(failures_before(1, 0.1).quantile(0.999_000_1), Some(3));
}

#[test]
fn nothing_handled_or_nothing_breaks() {
    for d in [binomial(0, 0.3), binomial(70, 0.0), failures_before(0, 0.3), failures_before(70, 0.0)] {
        assert_eq!(d, Distribution::certain(0));
        assert_eq!((d.quantile(0.999), d.mean(), d.variance(), d.cdf(0)), (Some(0), 0.0, 0.0, 1.0));
    }
    assert_eq!(binomial(7, 1.0), Distribution::certain(7));
    assert_eq!(failures_before(0, 1.0), Distribution::certain(0));
}

#[test]
fn what_is_no_probability_or_too_wide_is_an_error() {
    for p in [-0.1, 1.1, f64::NAN, f64::INFINITY] {
        assert!(matches!(Distribution::binomial(3, p), Err(CountError::Probability(_))));
        assert!(matches!(Distribution::failures_before(3, p), Err(CountError::Probability(_))));
    }
    assert_eq!(Distribution::failures_before(3, 1.0), Err(CountError::Probability(1.0)));
    assert_eq!(Distribution::failures_before(1, 1.0 - 1e-12), Err(CountError::TooLarge));
    assert_eq!(Distribution::binomial(u64::MAX, 1e-19), Err(CountError::TooLarge));
    assert_eq!(
        CountError::Probability(1.5).to_string(),
        "breakage `1.5` is not from 0 to 1, or is 1 for a tile whose spare is cut again"
    );
}

/// Every sequence of breaks and cuts of a given length, tried one by one.
#[test]
pub(crate) fn failures_before_is_the_first_passage_of_the_trials() {
    for (n, p) in [(1u32, 0.3), (2, 0.06), (3, 0.5), (4, 0.9)] {
        for most in 0..8u32 {
            let trials = n + most;
            let enough: f64 = (0..1u32 << trials)
                .filter(|broken| broken.count_ones() <= most)
                .map(|broken| {
                    let breaks = broken.count_ones() as i32;
                    f64::powi(p, breaks) * f64::powi(1.0 - p, trials as i32 - breaks)
                })
                .sum();
            assert_near(failures_before(u64::from(n), p).cdf(u64::from(most)), enough, 1e-13);
        }
    }
}

#[test]
fn far_tails_keep_their_digits() {
    // P(F > s) = p^(s + 1) for one tile; 1 − cdf would have none of the last one's digits right.
    for (s, want) in [(0, 5e-2), (3, 6.25e-6), (9, 9.765_625e-14)] {
        assert_near(failures_before(1, 0.05).chance_above(s), want, 1e-15 * want + 1e-18);
    }
    assert_eq!(binomial(3, 0.5).chance_above(3), 0.0);
    assert_eq!(binomial(3, 0.5).chance_above(u64::MAX), 0.0);
    assert_eq!(binomial(3, 0.5).cdf(u64::MAX), 1.0);
}

// Computed with mpmath at 30 digits, from the mode's log-gamma functions outward.
#[test]
fn a_million_tiles_keep_twelve_digits() {
    for (p, s, want) in [
        (0.01, 10_164, 0.950_576_352_283_834_3),
        (0.06, 60_391, 0.950_267_772_471_678_7),
        (0.5, 500_822, 0.950_015_118_575_159_3),
        (0.9, 900_493, 0.950_093_445_336_694_1),
    ] {
        assert_near(binomial(1_000_000, p).cdf(s), want, 1e-12);
        assert_eq!(binomial(1_000_000, p).quantile(0.95), Some(s));
    }
    for (p, s, want) in [
        (0.06, 64_259, 0.950_303_345_490_301_1),
        (0.5, 1_002_327, 0.950_034_465_338_563_6),
        (0.9, 9_015_610, 0.950_007_051_227_895_8),
    ] {
        assert_near(failures_before(1_000_000, p).cdf(s), want, 1e-12);
        assert_eq!(failures_before(1_000_000, p).quantile(0.95), Some(s));
    }
}

fn any_probability() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.0..1.0f64,
        1 => (0..300i32).prop_map(|e| f64::powi(10.0, -e - 1)),
        1 => (1..10i32).prop_map(|e| 1.0 - f64::powi(10.0, -e)),
        1 => Just(0.0),
    ]
}
fn any_count() -> impl Strategy<Value = u64> {
    prop_oneof![4 => 0..200u64, 1 => 0..=1_000_000u64]
}

fn agrees(ours: &Distribution, reference: impl Fn(u64) -> f64, q: f64) -> Result<(), TestCaseError> {
    let s = ours.quantile(q).unwrap();
    let below = if s == 0 { 0.0 } else { reference(s - 1) };
    prop_assert!((ours.cdf(s) - reference(s)).abs() < 1e-9);
    prop_assert!((ours.chance_above(s) - (1.0 - reference(s))).abs() < 1e-9);
    if (reference(s) - q).abs() > 1e-9 && (below - q).abs() > 1e-9 {
        prop_assert!(below < q && q <= reference(s));
    }
    Ok(())
}

/// What holds for every distribution of a given mean and variance.
fn check(d: &Distribution, mean: f64, variance: f64) -> Result<(), TestCaseError> {
    let sum: f64 = values(d).map(|(_, p)| p).sum();
    prop_assert!((sum - 1.0).abs() < 1e-12, "sum {sum}");
    prop_assert!((d.mean() - mean).abs() <= 1e-10 * mean.max(1e-6), "mean {} for {mean}", d.mean());
    prop_assert!(
        (d.variance() - variance).abs() <= 1e-9 * variance.max(1e-6),
        "variance {} for {variance}",
        d.variance()
    );
    prop_assert!((values(d).count() as f64) < 64.0 + 42.0 * f64::sqrt(variance));
    Ok(())
}

proptest! {
    #[test]
    fn binomial_moments(n in any_count(), p in any_probability()) {
        check(&binomial(n, p), n as f64 * p, n as f64 * p * (1.0 - p))?;
    }

    #[test]
    fn failures_before_moments(n in any_count(), p in any_probability()) {
        let (mean, variance) = (n as f64 * p / (1.0 - p), n as f64 * p / (1.0 - p) / (1.0 - p));
        match Distribution::failures_before(n, p) {
            Ok(d) => check(&d, mean, variance)?,
            Err(error) => {
                prop_assert_eq!(error, CountError::TooLarge);
                prop_assert!(variance > 1.9e4 * 1.9e4);
            }
        }
    }

    #[test]
    fn any_input_gives_numbers_or_an_error(
        n in any::<u64>(), small in 0..50u64, p in proptest::num::f64::ANY, q in proptest::num::f64::ANY,
    ) {
        for n in [n, small] {
            for d in [Distribution::binomial(n, p), Distribution::failures_before(n, p)].into_iter().flatten() {
                prop_assert!(d.mean().is_finite() && d.variance() >= 0.0);
                let s = d.quantile(q).unwrap();
                prop_assert!((0.0..=1.0).contains(&d.cdf(s)) && (0.0..=1.0).contains(&d.chance_above(s)));
                prop_assert!((d.cdf(s) + d.chance_above(s) - 1.0).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn the_quantile_is_the_least_that_reaches_and_rises_with_the_level(
        n in 0..3000u64, p in 0.0..0.9f64, q in 0.0..1.0f64, lower in 0.0..1.0f64,
    ) {
        for d in [binomial(n, p), failures_before(n, p)] {
            let s = d.quantile(q).unwrap();
            prop_assert!(d.cdf(s) + 1.1e-12 >= q);
            prop_assert!(s == 0 || d.cdf(s - 1) + 0.9e-12 < q);
            prop_assert!(d.quantile(q * lower).unwrap() <= s);
        }
    }

    /// statrs computes the same through the incomplete beta function. Its own quantiles are wrong on
    /// ties and panic where no spare is needed: the least `s` is judged by its cdf, away from ties.
    #[test]
    fn agrees_with_the_reference_library(n in 1..2000u64, p in 0.001..0.95f64, q in 0.001..0.999f64) {
        let reference = Binomial::new(p, n).unwrap();
        agrees(&binomial(n, p), |s| reference.cdf(s), q)?;
        let reference = NegativeBinomial::new(n as f64, 1.0 - p).unwrap();
        agrees(&failures_before(n, p), |s| reference.cdf(s), q)?;
    }

    /// At most `f` fail before the `n`-th success exactly when `n + f` trials hold at most `f` failures.
    #[test]
    fn failures_and_successes_tell_the_same_story(n in 1..5000u64, p in 0.0..0.9f64, q in 0.001..0.999f64) {
        let d = failures_before(n, p);
        let f = d.quantile(q).unwrap();
        prop_assert!((d.cdf(f) - binomial(n + f, p).cdf(f)).abs() < 1e-11);
    }

    #[test]
    fn convolution_commutes_and_adds_counts(
        n in 0..800u64, m in 0..800u64, p in 0.0..0.9f64, r in 0.0..0.9f64,
    ) {
        let (a, b) = (binomial(n, p), failures_before(m, r));
        let (ab, ba) = (a.convolve(&b), b.convolve(&a));
        for (k, probability) in values(&ab) {
            prop_assert!((probability - ba.probability(k)).abs() < 1e-15);
        }
        check(&ab, a.mean() + b.mean(), a.variance() + b.variance())?;
        for (sum, whole) in [
            (a.convolve(&binomial(m, p)), binomial(n + m, p)),
            (b.convolve(&failures_before(n, r)), failures_before(n + m, r)),
        ] {
            for (k, probability) in values(&whole) {
                prop_assert!((probability - sum.probability(k)).abs() < 1e-12);
            }
        }
    }
}
