//! Cheapest posts along a rail against all subsets.
use proptest::prelude::*;

use super::super::{additive, check, place_posts};
use super::jobs::{array, with_arrays};
use crate::layout::objective::Objective;
use crate::layout::solve::{Wanted, solve};
use crate::model::{SpanZone, *};
use crate::testing::*;

/// The search's own sum is what the posts cost one by one, and the checker finds nothing.
#[test]
fn two_arrays_on_the_gable() {
    let job = with_arrays(vec![array("west", "2 ft", "24 in", 4), array("east", "20 ft", "26 in", 4)]);
    let laid = solve(&job, Wanted::default()).unwrap();
    let after = place_posts(&job).unwrap();
    let money: i64 = laid.iter().map(|laid| laid.placed.objective.money).sum();
    let cost = additive(&after).unwrap().total();
    assert!((cost - money as f64 / 1e6).abs() < 1e-4, "{cost} and {money}");
    assert_eq!(check(&job, &after), []);
}

/// With all rails and posts where they were found nothing is gained by laying out once more.
#[test]
fn a_laid_job_stays_as_it_is() {
    let job = with_arrays(vec![array("west", "2 ft", "24 in", 4)]);
    let once = place_posts(&job).unwrap();
    let objective = |job: &Job| solve(job, Wanted::default()).unwrap()[0].placed.objective;
    let mut again = once.clone();
    // The array may not go further than it could before.
    again.slopes[0].arrays[0].shift = Default::default();
    assert_eq!(objective(&again), objective(&job));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Easing a constraint never costs more.
    #[test]
    fn what_gives_way_never_costs_more(which in 0..11usize, v in 0..40i64, span in 30..80i64, overhang in 8..30i64) {
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
        let objective = |job: &Job| -> Option<Objective> { solve(job, Wanted::default()).ok().map(|laid| laid[0].placed.objective) };
        let constraint = crate::layout::Constraint::ALL[which];
        if let (Some(now), Some(relaxed)) = (objective(&job), constraint.relaxed(&job, inches(1.0))) {
            let then = objective(&relaxed);
            prop_assert!(then.is_some_and(|then| then <= now), "{constraint:?}: {now:?} to {then:?}");
        }
    }
}
