//! Solutions: their objective against the additive cost of the laid-out job, and relaxed limits.
use proptest::prelude::*;

use super::super::{Constraint, additive, check, place_posts};
use super::jobs::{array, with_arrays};
use crate::layout::objective::Objective;
use crate::layout::solve::{Detail, SolvedArray, solve};
use crate::model::{SpanZone, *};
use crate::testing::*;

fn solved(job: &Job) -> Option<Vec<SolvedArray>> {
    solve(job, Detail::Placement).ok()
}

fn objective(job: &Job) -> Option<Objective> {
    solved(job).map(|solved| solved[0].placement.objective)
}

#[test]
fn objective_is_the_additive_cost_and_the_checker_finds_nothing() {
    let job = with_arrays(vec![array("west", "2 ft", "24 in", 4), array("east", "20 ft", "26 in", 4)]);
    let after = place_posts(&job).unwrap();
    let money: i64 = solved(&job).unwrap().iter().map(|solved| solved.placement.objective.money).sum();
    let cost = additive(&after).unwrap().total();
    assert!((cost - money as f64 / 1e6).abs() < 1e-4, "{cost} and {money}");
    assert_eq!(check(&job, &after), []);
}

/// Without any shift, the array stays where it was placed and the objective is the same.
#[test]
fn a_second_layout_gains_nothing() {
    let job = with_arrays(vec![array("west", "2 ft", "24 in", 4)]);
    let mut again = place_posts(&job).unwrap();
    again.slopes[0].arrays[0].shift = Shift::default();
    assert_eq!(objective(&again), objective(&job));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn a_relaxed_limit_never_costs_more(
        which in 0..11usize,
        v in 0..40i64,
        span in 30..80i64,
        overhang in 8..30i64,
    ) {
        let mut west = array("west", "30 in", "24 in", 3);
        west.at.v = inches(20.0 + v as f64 / 4.0);
        let rails = west.rails.as_mut().unwrap();
        rails.greatest_span = inches(span as f64);
        rails.greatest_overhang = inches(overhang as f64);
        rails.zones = vec![SpanZone {
            name: "corner".into(),
            from: at("0", "0"),
            to: at("8 ft", "5 ft"),
            greatest_span: inches(span as f64 - 6.0),
            greatest_overhang: inches(overhang as f64),
        }];
        let mut job = with_arrays(vec![west]);
        job.slopes[0].setbacks.clear();
        let limit = Constraint::ALL[which];
        if let (Some(now), Some(relaxed)) = (objective(&job), limit.relaxed(&job, inches(1.0))) {
            let then = objective(&relaxed);
            prop_assert!(then.is_some_and(|then| then <= now), "{limit:?}: {now:?} to {then:?}");
        }
    }
}
