//! Jobs without a layout: what clashes, and what would have to give.
use super::super::{lay_out, layout};
use super::cost::priced;
use super::jobs::{array, with_arrays};
use crate::model::{Job, Shift};
use crate::testing::*;

fn refused(job: &Job) -> (String, String, String) {
    let problems = layout(job).map(|laid| laid.layout).unwrap_err();
    assert_eq!(lay_out(job).unwrap_err(), problems);
    let [problem] = &problems[..] else { panic!("{problems:#?}") };
    (problem.code.to_string(), problem.message.clone(), problem.help.clone())
}

/// Rafters are 24 in apart, at 8 in and so on. The array's 179 in reach from 24 in, 6 in to both sides.
fn clashing(span: &str, overhang: &str) -> (String, String) {
    let mut west = array("west", "2 ft", "24 in", 4);
    let rails = west.rails.as_mut().unwrap();
    rails.greatest_span = len(span);
    rails.greatest_overhang = len(overhang);
    let (code, message, help) = refused(&with_arrays(vec![west]));
    assert_eq!(code, "no-layout");
    (message, help)
}

#[test]
fn what_clashes_is_told_with_what_would_have_to_give() {
    let (message, help) = clashing("23 in", "20 in");
    let both = "the greatest span of 23 in and no blocking between the rafters can't be kept together";
    assert_eq!(message, format!("the array `west` on `south` has no layout: {both}"));
    assert_eq!(help, "let the greatest span be 24 in, or allow blocking");

    // Seven bays are 168 in of the 179: 11 in are left for both ends, so 5 1/2 in at best.
    let (message, help) = clashing("48 in", "3 in");
    assert_eq!(
        message,
        "the array `west` on `south` has no layout: the greatest overhang of 3 in can't be kept"
    );
    assert_eq!(help, "let the greatest overhang be 5 1/2 in");
    let (_, help) = clashing("48 in", "5 7/16 in");
    assert_eq!(help, "let the greatest overhang be 5 1/2 in");
}

#[test]
fn nothing_to_lay_out_or_to_weigh_by() {
    assert_eq!(refused(&priced(&[])).0, "no-rails");
    let job = with_arrays(vec![array("west", "2 ft", "24 in", 4)]);
    assert_eq!(refused(&Job { prices: None, bid: None, ..job.clone() }).0, "no-costs");
    let mut large = job;
    large.slopes[0].arrays[0].rows = 20_000;
    large.slopes[0].arrays[0].shift = Shift { up: len("1 in"), ..Shift::default() };
    let (code, message, _) = refused(&large);
    assert_eq!(
        (code.as_str(), message.as_str()),
        ("too-many", "the array `west` has too many rails, rafters and courses to look at")
    );
}
