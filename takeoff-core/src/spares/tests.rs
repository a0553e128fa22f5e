//! From tiles handled to tiles bought, for one job and for pools.
use crate::model::Breakage;
use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;
use crate::probability::tests::{assert_near, binomial, failures_before};
use crate::probability::*;

const HANDLED: Handled = Handled { severed: 0, cut: 40, removed: 60, loosened: 100, walked: 200 };
const BREAKAGE: Breakage = Breakage {
    cut: Rate::Known(0.06),
    removed: Rate::Known(0.02),
    loosened: Rate::Known(0.01),
    walked: Rate::Known(0.005),
    recut: true,
};
const JOB: Demand =
    Demand { handled: HANDLED, breakage: BREAKAGE, pieces_for_severed: 2, on_hand: 0, harvested: 0 };

fn cut_only(n: u64) -> Demand {
    Demand { handled: Handled { cut: n, ..Handled::default() }, ..JOB }
}

#[test]
fn classes_add_up() {
    let got = pooled(&[JOB], 0.95).unwrap();
    // 40 · 0.06/0.94 + 60 · 0.02 + 100 · 0.01 + 200 · 0.005
    assert_near(got.expected.unwrap(), 2.4 / 0.94 + 1.2 + 1.0 + 1.0, 1e-12);
    assert_near(got.distribution.mean(), 2.4 / 0.94 + 1.2 + 1.0 + 1.0, 1e-12);
    assert!(
        got.stockout_probability <= 0.05 + 1e-12
            && got.distribution.chance_above(got.used_at_level - 1) > 0.05
    );
    assert_eq!(got.spares, got.used_at_level);

    let without = Breakage { recut: false, ..BREAKAGE };
    assert_near(used(&[Demand { breakage: without, ..JOB }]).unwrap().mean(), 2.4 + 1.2 + 1.0 + 1.0, 1e-12);
    assert_eq!(used(&[Demand { breakage: without, ..cut_only(40) }]).unwrap(), binomial(40, 0.06));
    assert_eq!(used(&[cut_only(40)]).unwrap(), failures_before(40, 0.06));
}

#[test]
fn severed_tiles_are_no_trial_and_tiles_on_hand_are_used_first() {
    let job = Demand { handled: Handled { severed: 3, ..Handled::default() }, ..JOB };
    let got = pooled(&[job], 0.95).unwrap();
    assert_eq!((got.used_at_level, got.for_severed, got.spares), (0, 6, 6));
    assert_eq!((got.stockout_probability, got.expected), (0.0, Some(0.0)));
    let chances: Vec<(u64, f64)> =
        got.alternatives.iter().map(|a| (a.spares, a.stockout_probability)).collect();
    assert_eq!(chances, [(4, 1.0), (5, 1.0), (6, 0.0), (7, 0.0), (8, 0.0)]);

    let got = pooled(&[Demand { on_hand: 4, harvested: 2, pieces_for_severed: 3, ..job }], 0.95).unwrap();
    assert_eq!((got.for_severed, got.on_hand, got.harvested, got.spares), (9, 4, 2, 3));
    let got = pooled(&[Demand { on_hand: 100, ..job }], 0.95).unwrap();
    assert_eq!((got.spares, got.alternatives.len()), (0, 3));

    let too_many = Demand { handled: Handled { severed: u64::MAX, ..Handled::default() }, ..JOB };
    assert_eq!(pooled(&[too_many], 0.95), Err(CountError::TooLarge));
}

#[test]
fn the_report_does_not_carry_the_whole_distribution() {
    let written = serde_json::to_value(pooled(&[JOB], 0.95).unwrap()).unwrap();
    let fields: BTreeSet<&str> = written.as_object().unwrap().keys().map(String::as_str).collect();
    let want = [
        "used_at_level",
        "for_severed",
        "on_hand",
        "harvested",
        "spares",
        "expected",
        "chance_short",
        "alternatives",
    ];
    assert_eq!(fields, BTreeSet::from(want));
}

#[test]
fn alternatives_run_from_surely_short_to_next_to_never_and_stay_few() {
    for job in [JOB, cut_only(3), cut_only(200_000), Demand { on_hand: 9, ..JOB }] {
        let got = pooled(&[job], 0.95).unwrap();
        let (first, last) = (got.alternatives[0], got.alternatives[got.alternatives.len() - 1]);
        assert!(first.spares == 0 || first.stockout_probability > 0.98, "{first:?}");
        assert!(last.stockout_probability < 0.002, "{last:?}");
        assert!(got.alternatives.len() <= 402);
        let steps: BTreeSet<u64> = got.alternatives.windows(2).map(|w| w[1].spares - w[0].spares).collect();
        assert_eq!(steps.len(), 1);
    }
}

// Levels that a pool need not keep: each job alone is whole with 0.95, so none needs a spare; twenty together do.
#[test]
fn a_pool_may_need_more_than_its_jobs_apart_where_each_just_reaches_the_level() {
    let job =
        Demand { breakage: Breakage { recut: false, cut: Rate::Known(0.05), ..BREAKAGE }, ..cut_only(1) };
    assert_eq!(pooled(&[job], 0.95).unwrap().spares, 0);
    // P(X ≤ 2) of binomial(20, 0.05) is 0.9245, P(X ≤ 3) 0.9841.
    assert_eq!(pooled(&[job; 20], 0.95).unwrap().spares, 3);
}

#[test]
fn jobs_of_one_rate_are_one_job_and_one_record_makes_them_depend() {
    let halves = [Demand { on_hand: 2, ..cut_only(30) }, Demand { on_hand: 3, ..cut_only(50) }];
    let whole = Demand { on_hand: 5, ..cut_only(80) };
    assert_eq!(pooled(&halves, 0.95), pooled(&[whole], 0.95));

    let posterior = Breakage { cut: Rate::Beta { alpha: 5.0, beta: 95.0 }, ..BREAKAGE };
    let of_crew = |n| Demand { breakage: posterior, ..cut_only(n) };
    let together = used(&[of_crew(30), of_crew(50)]).unwrap();
    assert_eq!(together, Distribution::beta_failures_before(80, 5.0, 95.0).unwrap());
    // Two crews of the same skill each: independent, so that the sum spreads less.
    let other = Breakage { cut: Rate::Beta { alpha: 5.0, beta: 95.000_001 }, ..BREAKAGE };
    let apart = used(&[of_crew(30), Demand { breakage: other, ..cut_only(50) }]).unwrap();
    assert_near(apart.mean(), together.mean(), 1e-6);
    assert!(apart.variance() < 0.8 * together.variance());
}

#[test]
fn a_record_too_short_has_no_mean_and_refuses_what_it_cannot_know() {
    let posterior = Breakage { cut: Rate::Beta { alpha: 0.06, beta: 0.94 }, ..BREAKAGE };
    let job = Demand { breakage: posterior, ..JOB };
    let got = pooled(&[job], 0.95).unwrap();
    assert_eq!(got.expected, None);
    assert!(got.stockout_probability <= 0.05 && got.distribution.chance_above(got.used_at_level - 1) > 0.05);
    assert_eq!(pooled(&[job], 0.999_999), Err(CountError::RecordTooShort));
    // Nothing is cut: nothing is unknown.
    let none = Demand { handled: Handled { cut: 0, ..HANDLED }, ..job };
    assert_near(pooled(&[none], 0.999_999).unwrap().expected.unwrap(), 1.2 + 1.0 + 1.0, 1e-12);
}

fn any_rate() -> impl Strategy<Value = Rate> {
    prop_oneof![
        (0.0..0.3f64).prop_map(Rate::Known),
        (0..60u64, 1..200u64, 0.01..0.2f64).prop_map(|(broken, whole, p)| {
            Rate::posterior(p, 20, Record { handled: broken + whole, broken }).unwrap()
        }),
    ]
}

prop_compose! {
    fn any_job()(
        severed in 0..4u64, cut in 0..150u64, removed in 0..150u64, loosened in 0..150u64, walked in 0..50u64,
        rates in prop::array::uniform4(any_rate()), recut: bool, on_hand in 0..10u64, harvested in 0..10u64,
    ) -> Demand {
        let [cut_rate, removed_rate, loosened_rate, walked_rate] = rates;
        Demand {
            handled: Handled { severed, cut, removed, loosened, walked },
            breakage: Breakage {
                cut: cut_rate, removed: removed_rate, loosened: loosened_rate, walked: walked_rate, recut,
            },
            pieces_for_severed: 2,
            on_hand,
            harvested,
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn more_tiles_never_need_fewer_spares_and_those_on_hand_are_saved(
        job in any_job(), more in 0..50u64, q in 0.5..0.999f64,
    ) {
        let bare = Demand { on_hand: 0, harvested: 0, ..job };
        let need = pooled(&[bare], q).unwrap();
        let Handled { cut, removed, .. } = job.handled;
        for larger in [Handled { cut: cut + more, ..job.handled }, Handled { removed: removed + more, ..job.handled }] {
            let larger = pooled(&[Demand { handled: larger, ..bare }], q).unwrap();
            prop_assert!(larger.spares >= need.spares);
        }
        let stocked = pooled(&[job], q).unwrap();
        prop_assert_eq!(stocked.spares, need.spares.saturating_sub(job.on_hand + job.harvested));
        prop_assert!(stocked.stockout_probability <= need.stockout_probability);
        prop_assert!(stocked.alternatives.windows(2).all(|w| w[0].stockout_probability >= w[1].stockout_probability));
        let ordered = (stocked.spares, stocked.stockout_probability);
        prop_assert!(stocked.alternatives.iter().any(|a| (a.spares, a.stockout_probability) == ordered));
    }

    #[test]
    fn a_higher_level_never_needs_fewer(jobs in prop::collection::vec(any_job(), 1..4), q in 0.3..0.99f64, lower in 0.0..1.0f64) {
        prop_assert!(pooled(&jobs, q * lower + 1e-6).unwrap().spares <= pooled(&jobs, q).unwrap().spares);
    }

    /// What `k` jobs buy apart, each for the level `q`, is enough for all of them with `q^k` at least: exactly so where
    /// they are independent, and more where one crew's unknown rate moves them together.
    #[test]
    fn a_pool_never_needs_more_than_its_jobs_apart_at_the_level_that_they_keep_together(
        jobs in prop::collection::vec(any_job(), 2..4), same_crew: bool, q in 0.5..0.99f64,
    ) {
        let breakage = |job: Demand| if same_crew { jobs[0].breakage } else { job.breakage };
        let jobs: Vec<Demand> =
            jobs.iter().map(|&job| Demand { breakage: breakage(job), on_hand: 0, harvested: 0, ..job }).collect();
        let apart: u64 = jobs.iter().map(|job| pooled(&[*job], q).unwrap().spares).sum();
        let level = q.powi(jobs.len() as i32);
        prop_assert!(pooled(&jobs, level - 1e-9).unwrap().spares <= apart);
    }
}
