//! The number of spares at the least expected cost.
use proptest::prelude::*;
use statrs::distribution::{ContinuousCDF, Normal};

use super::super::*;
use super::{assert_near, binomial};

/// `n` equally likely values of a continuous quantity, each the middle of its share, as a count from 0.
fn in_steps(n: u64) -> Distribution {
    Distribution { offset: 0, pmf: vec![1.0 / n as f64; n as usize], beyond: 0.0 }
}

// Published worked examples of the newsvendor: price 7, cost 5, nothing back, demand uniform from 50 to 80: 58.57
// (an encyclopaedia's article on the model); price 59, cost 39, 30 back, demand uniform from 350 to 620: 536.2 (a public
// calculator's documentation). The cost of one left over is cost − back, of one short price − cost, so that our
// c/b is (cost − back)/(price − back). Demand is taken in steps of a thousandth.
#[test]
fn published_examples_of_uniform_demand() {
    for (price, cost, back, from, to, order) in
        [(7.0, 5.0, 0.0, 50.0, 80.0, 58.57), (59.0, 39.0, 30.0, 350.0, 620.0, 536.2)]
    {
        let steps = ((to - from) * 1000.0) as u64;
        let found = least_cost(&in_steps(steps), (cost - back) / (price - back)).unwrap();
        assert_near(from + found as f64 / 1000.0, order, 0.01);
    }
}

// The same with normal demand: N(50, 20) 38.68 and N(485, 50) 509.74 (the former's article prints about 39, the
// latter's page about 510 by a rounded z), N(10000, 2000) at price 15, cost 10, 3 back: 9579. And one page prints 92.6
// for a ratio of 0.353 of N(80, 30), which has the wrong sign: below one half the order is below the mean, 68.68.
#[test]
fn published_examples_of_normal_demand() {
    for (ratio, mean, deviation, order, digits) in [
        (5.0 / 7.0, 50.0, 20.0, 38.68, 0.01),
        (9.0 / 29.0, 485.0, 50.0, 509.74, 0.01),
        (7.0 / 12.0, 10_000.0, 2_000.0, 9_579.0, 0.6),
        (1.0 - 0.353, 80.0, 30.0, 68.68, 0.01),
    ] {
        let normal = Normal::new(mean, deviation).unwrap();
        let step = deviation / 20_000.0;
        let low = mean - 8.0 * deviation;
        let up_to = |i: u32| normal.cdf(low + f64::from(i) * step);
        let pmf = (0..320_000).map(|i| up_to(i + 1) - up_to(i)).collect();
        let found = least_cost(&Distribution { offset: 0, pmf, beyond: 0.0 }, ratio).unwrap();
        assert_near(low + found as f64 * step, order, digits);
    }
}

// The quantiles of the binomial that scipy gives, as orders: c/b = 1 − q.
#[test]
fn orders_of_broken_tiles() {
    for (n, p, q, order) in
        [(100, 0.05, 0.95, 9), (40, 0.03, 0.90, 3), (60, 0.05, 0.95, 6), (24, 0.10, 0.90, 4)]
    {
        assert_eq!(least_cost(&binomial(n, p), 1.0 - q), Some(order));
    }
    for dear in [1.0, 1.5, 40.0, f64::INFINITY] {
        assert_eq!(least_cost(&binomial(100, 0.05), dear), Some(0), "a spare dearer than a tile short");
    }
}

/// `c·s + b·E[(X − s)+]`, term by term.
fn cost(d: &Distribution, ratio: f64, s: u64) -> f64 {
    let short: f64 = super::values(d).map(|(k, p)| p * k.saturating_sub(s) as f64).sum();
    ratio * s as f64 + short
}

proptest! {
    #[test]
    fn no_other_number_costs_less(n in 1..400u64, p in 0.0..0.5f64, ratio in 0.001..1.2f64) {
        let d = binomial(n, p);
        let best = least_cost(&d, ratio).unwrap();
        let least = cost(&d, ratio, best);
        for s in 0..=n {
            prop_assert!(cost(&d, ratio, s) >= least - 1e-9, "{s} is cheaper than {best}");
        }
    }
}
