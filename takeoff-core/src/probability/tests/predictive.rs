//! Counts with a rate that is known from a record.
use proptest::prelude::*;

use super::super::*;
use super::{assert_near, binomial, failures_before, values};
use crate::num::math::{exp, lgamma};

fn beta_binomial(n: u64, alpha: f64, beta: f64) -> Distribution {
    Distribution::beta_binomial(n, alpha, beta).unwrap()
}
fn beta_failures(n: u64, alpha: f64, beta: f64) -> Distribution {
    Distribution::beta_failures_before(n, alpha, beta).unwrap()
}

fn ln_beta(a: f64, b: f64) -> f64 {
    lgamma(a) + lgamma(b) - lgamma(a + b)
}
fn ln_choose(n: u64, k: u64) -> f64 {
    lgamma(n as f64 + 1.0) - lgamma(k as f64 + 1.0) - lgamma((n - k) as f64 + 1.0)
}
/// The probabilities as they are written in textbooks.
fn textbook_binomial(n: u64, a: f64, b: f64, k: u64) -> f64 {
    exp(ln_choose(n, k) + ln_beta(a + k as f64, b + (n - k) as f64) - ln_beta(a, b))
}
fn textbook_failures(n: u64, a: f64, b: f64, f: u64) -> f64 {
    exp(ln_choose(n + f - 1, f) + ln_beta(a + f as f64, b + n as f64) - ln_beta(a, b))
}

// Boys among the first 12 children of 6115 families in Saxony, 1876–1885, fitted by maximum likelihood with
// α = 34.09558, β = 31.5715: the expected numbers of families with 0 to 12 boys as an encyclopaedia's article on the
// beta-binomial distribution prints them (parameters and numbers from memory).
#[test]
fn families_of_saxony() {
    let boys = beta_binomial(12, 34.095_58, 31.571_5);
    let expected = [2.3, 22.6, 104.8, 310.9, 655.7, 1036.2, 1257.9, 1182.1, 853.6, 461.9, 177.9, 43.8, 5.2];
    for (k, want) in (0..).zip(expected) {
        assert_near(6115.0 * boys.probability(k), want, 0.06);
    }
}

// Laplace's rule of succession: after `s` of `n` the next is one with (s + 1)/(n + 2), from a uniform prior.
#[test]
fn rule_of_succession() {
    let rate = Rate::posterior(0.5, 2, Record { handled: 10, broken: 3 }).unwrap();
    assert_eq!(rate, Rate::Beta { alpha: 4.0, beta: 8.0 });
    assert_near(beta_binomial(1, 4.0, 8.0).probability(1), 4.0 / 12.0, 1e-15);
}

#[test]
fn records_that_make_no_rate() {
    let posterior = |weight, handled, broken| Rate::posterior(0.06, weight, Record { handled, broken });
    assert_eq!(posterior(50, 9, 10), Err(RecordError::MoreBrokenThanHandled));
    for (handled, broken) in [(0, 0), (9, 0), (9, 9)] {
        assert_eq!(posterior(0, handled, broken), Err(RecordError::SaysNothing));
        assert!(posterior(1, handled, broken).is_ok());
    }
    assert_eq!(posterior(0, 9, 1), Ok(Rate::Beta { alpha: 1.0, beta: 8.0 }));
    // Stated as impossible, and never seen otherwise.
    assert_eq!(Rate::posterior(0.0, 50, Record { handled: 90, broken: 0 }), Ok(Rate::Known(0.0)));
}

#[test]
fn what_has_no_distribution_is_an_error() {
    for (alpha, beta) in [(0.0, 1.0), (1.0, 0.0), (-1.0, 2.0), (f64::NAN, 1.0), (1.0, f64::INFINITY)] {
        assert!(matches!(Distribution::beta_binomial(3, alpha, beta), Err(CountError::Probability(_))));
        assert!(matches!(
            Distribution::beta_failures_before(3, alpha, beta),
            Err(CountError::Probability(_))
        ));
    }
    assert_eq!(Distribution::beta_binomial(1_000_000, 1.0, 1.0), Err(CountError::TooLarge));
    assert_eq!(Distribution::beta_failures_before(u64::MAX, 1.0, 1.0), Err(CountError::TooLarge));
    assert_eq!(Distribution::beta_failures_before(1_000_000, 12.0, 1.0), Err(CountError::TooLarge));
    assert_eq!(beta_binomial(0, 1.0, 1.0), Distribution::certain(0));
    assert_eq!(beta_failures(0, 1.0, 1.0), Distribution::certain(0));
}

// P(F > f) = 1/(f + 2) for one tile and a uniform rate: no window holds that, and what it holds is exact.
#[test]
fn a_heavy_tail_is_kept_as_one_number() {
    let d = beta_failures(1, 1.0, 1.0);
    for f in [0, 9, 998, 8_000] {
        assert_near(d.chance_above(f), 1.0 / (f as f64 + 2.0), 1e-13);
    }
    assert_near(d.chance_above(u64::MAX), 1.0 / 8_194.0, 1e-13);
    assert_eq!(d.quantile(0.999), Some(998));
    assert_eq!(d.quantile(0.9999), None);
    // Of two such counts less is known, and what is known is true: P(X + Y ≤ s) as a double sum.
    let two = d.convolve(&d);
    for s in [0_u64, 5, 300] {
        let one = |f: u64| 1.0 / ((f as f64 + 1.0) * (f as f64 + 2.0));
        let sum: f64 = (0..=s).map(|x| one(x) * (1.0 - 1.0 / ((s - x) as f64 + 2.0))).sum();
        assert_near(two.cdf(s), sum, 1e-13);
    }
    assert_near(two.cdf(u64::MAX) + two.chance_above(u64::MAX), 1.0, 1e-12);
    assert!(two.chance_above(u64::MAX) > 2.0 / 8_194.0 - 1e-6);
}

#[test]
fn many_tiles_and_little_known_keep_their_digits() {
    // n = 100 000 underflows P(F = 0); log-gamma functions are good to some 1e-9 here.
    let d = beta_failures(100_000, 7.06, 1.94);
    for f in [1_000, 50_000, 90_000] {
        let want = textbook_failures(100_000, 7.06, 1.94, f);
        if d.probability(f) > 0.0 {
            assert_near(d.probability(f) / want, 1.0, 1e-8);
        }
    }
    assert!(d.beyond > 0.1, "{}", d.beyond);
}

fn any_parameter() -> impl Strategy<Value = f64> {
    prop_oneof![0.02..3.0f64, 1.0..400.0f64]
}

proptest! {
    #[test]
    fn probabilities_are_the_textbooks(n in 1..400u64, a in any_parameter(), b in any_parameter(), k in 0..400u64) {
        let (ours, textbook) = (beta_binomial(n, a, b), textbook_binomial(n, a, b, k.min(n)));
        prop_assert!((ours.probability(k.min(n)) - textbook).abs() <= 1e-9 * textbook + 1e-17);
        let (ours, textbook) = (beta_failures(n, a, b), textbook_failures(n, a, b, k));
        prop_assert!((ours.probability(k) - textbook).abs() <= 1e-9 * textbook + 1e-17, "{} {textbook}", ours.probability(k));
    }

    #[test]
    fn all_probabilities_and_what_lies_beyond_are_one(n in 1..400u64, a in any_parameter(), b in any_parameter()) {
        for d in [beta_binomial(n, a, b), beta_failures(n, a, b)] {
            prop_assert!((d.cdf(u64::MAX) + d.chance_above(u64::MAX) - 1.0).abs() < 1e-11);
            prop_assert!((0.0..=1.0).contains(&d.beyond));
            prop_assert!(d.pmf.iter().all(|p| (0.0..=1.0).contains(p)));
        }
    }

    #[test]
    fn means_are_those_of_the_closed_forms(n in 1..400u64, a in any_parameter(), b in any_parameter()) {
        let mean = n as f64 * a / (a + b);
        prop_assert!((beta_binomial(n, a, b).mean() - mean).abs() < 1e-9 * mean.max(1.0));
        let d = beta_failures(n, a, b + 30.0);
        let (mean, beta) = (n as f64 * a / (b + 29.0), b + 30.0);
        prop_assert!(d.beyond > 0.0 || (d.mean() - mean).abs() < 1e-8 * mean.max(1.0), "{} {mean}", d.mean());
        prop_assert_eq!(Rate::Beta { alpha: a, beta }.mean_broken_before(n).map(|m| (m - mean).abs() < 1e-9 * mean), Some(true));
    }

    /// At most `f` fail before the `n`-th success exactly when `n + f` trials hold at most `f` failures: so with any rate,
    /// and so with a rate that is not known.
    #[test]
    fn failures_and_trials_tell_the_same_story(n in 1..300u64, a in any_parameter(), b in any_parameter(), f in 0..300u64) {
        let (waiting, trials) = (beta_failures(n, a, b).cdf(f), beta_binomial(n + f, a, b).cdf(f));
        prop_assert!((waiting - trials).abs() < 1e-10, "{waiting} {trials}");
    }

    /// The more a stated rate weighs, the less is unknown of it.
    #[test]
    fn a_heavy_weight_is_a_known_rate(n in 1..200u64, p in 0.001..0.5f64) {
        let far = |weight: u64| {
            let Ok(Rate::Beta { alpha, beta }) = Rate::posterior(p, weight, Record::default()) else { return f64::NAN };
            let pairs = [
                (beta_binomial(n, alpha, beta), binomial(n, p)),
                (beta_failures(n, alpha, beta), failures_before(n, p)),
            ];
            let far = pairs.iter().map(|(a, b)| values(b).map(|(k, q)| (a.probability(k) - q).abs()).sum::<f64>());
            far.fold(0.0, f64::max)
        };
        prop_assert!(far(1_000_000) < 1e-2 && far(1_000_000) < far(1_000));
        prop_assert!(far(1_000_000_000_000) < 1e-6);
    }

    #[test]
    fn any_parameters_give_numbers_or_an_error(
        n in prop_oneof![0..3000u64, any::<u64>()], a in proptest::num::f64::ANY, b in proptest::num::f64::ANY, q in 0.0..1.0f64,
    ) {
        let both = [Distribution::beta_binomial(n, a, b), Distribution::beta_failures_before(n, a, b)];
        for d in both.into_iter().flatten() {
            prop_assert!(d.mean().is_finite() && d.beyond >= 0.0);
            if let Some(s) = d.quantile(q) {
                prop_assert!(d.cdf(s) + 1.1e-12 >= q && (0.0..=1.0).contains(&d.chance_above(s)));
            }
        }
    }
}
