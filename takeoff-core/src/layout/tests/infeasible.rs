//! Jobs without a layout: the infeasible limits, and their least relaxation.
use super::super::{layout, place_posts};
use super::costs::priced;
use super::jobs::{array, with_arrays};
use crate::model::{Job, Shift};
use crate::testing::*;

fn refused(job: &Job) -> (String, String, String) {
    let problems = layout(job).map(|laid| laid.layout).unwrap_err();
    assert_eq!(place_posts(job).unwrap_err(), problems);
    let [problem] = &problems[..] else { panic!("{problems:#?}") };
    (problem.code.to_string(), problem.message.clone(), problem.help.clone())
}

/// Rafters are 24 in apart, the first at 8 in. The array is 179 in wide, begins at 24 in, and can shift by 6 in.
fn infeasible(span: &str, overhang: &str) -> (String, String) {
    let mut west = array("west", "2 ft", "24 in", 4);
    let rails = west.rails.as_mut().unwrap();
    rails.greatest_span = len(span);
    rails.greatest_overhang = len(overhang);
    let (code, message, help) = refused(&with_arrays(vec![west]));
    assert_eq!(code, "no-layout");
    (message, help)
}

#[test]
fn infeasible_limits_are_named_with_their_relaxation() {
    let (message, help) = infeasible("23 in", "20 in");
    let both = "the greatest span of 23 in and no blocking between the rafters can't be kept together";
    assert_eq!(message, format!("the array `west` on `south` has no layout: {both}"));
    assert_eq!(help, "let the greatest span be 24 in, or allow blocking");

    // Seven bays are 168 in of the 179 in: 11 in remain for two overhangs, 5 1/2 in each.
    let (message, help) = infeasible("48 in", "3 in");
    assert_eq!(
        message,
        "the array `west` on `south` has no layout: the greatest overhang of 3 in can't be kept"
    );
    assert_eq!(help, "let the greatest overhang be 5 1/2 in");
    let (_, help) = infeasible("48 in", "5 7/16 in");
    assert_eq!(help, "let the greatest overhang be 5 1/2 in");
}

#[test]
fn jobs_without_arrays_without_costs_or_too_large_are_refused() {
    assert_eq!(refused(&priced(&[])).0, "no-rails");
    let job = with_arrays(vec![array("west", "2 ft", "24 in", 4)]);
    assert_eq!(refused(&Job { prices: None, bid: None, ..job.clone() }).0, "no-costs");
    let mut large = job;
    large.slopes[0].arrays[0].rows = 20_000;
    large.slopes[0].arrays[0].shift = Shift { up: len("1 in"), ..Shift::default() };
    let (code, message, _) = refused(&large);
    assert_eq!(
        (code.as_str(), message.as_str()),
        ("too-many", "the array `west` has too many rails, rafters and courses for a layout")
    );
}
