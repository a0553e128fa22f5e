use serde_json::{Value, json};

use super::super::{Member, Unscreened};
use crate::job::Files;
use crate::model::{Job, ThreadLimit};
use crate::takeoff::{Takeoff, takeoff};
use crate::units::Length;

/// The roof with two arrays, with values put at JSON Pointers; `null` takes a value away.
fn with(changes: &[(&str, Value)]) -> Takeoff {
    let mut job: Value =
        serde_json::from_str(include_str!("../../../../fixtures/screened-arrays/job.json")).unwrap();
    for (pointer, value) in changes {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        let parent = job.pointer_mut(parent).unwrap().as_object_mut().unwrap();
        match value {
            Value::Null => drop(parent.remove(key).unwrap()),
            value => drop(parent.insert(key.to_owned(), value.clone())),
        }
    }
    takeoff(&Job::read(&job.to_string(), &Files::new()).unwrap()).unwrap()
}

/// The findings of the screening, each with what it is about.
fn found(takeoff: &Takeoff) -> Vec<(&str, &str)> {
    let codes =
        ["not-screened", "uplift-above-resistance", "lag-too-near", "lag-spacing-unknown", "pilot-hole"];
    let of_screening = takeoff.findings.iter().filter(|finding| codes.contains(&finding.code.as_str()));
    of_screening.map(|finding| (finding.code.as_str(), finding.message.as_str())).collect()
}

#[test]
fn a_job_that_asks_for_no_screening_gets_none() {
    let takeoff = with(&[("/screening", Value::Null)]);
    assert!(takeoff.screening.is_none());
    assert_eq!(found(&takeoff), []);
}

#[test]
fn what_is_missing_is_told_and_nothing_is_pretended() {
    let all = "`S1`, `S2`, `M1`, `R-1-1`, `R-1-2` and 7 more";
    let below_arrays = "`S1`, `S2`, `R-1-1`, `R-1-2`, `R-1-3` and 6 more";
    for (left_out, posts, why) in [
        ("arrays", all, "below no array"),
        ("deck_thickness", below_arrays, "sheathing unknown"),
        ("rafters", below_arrays, "wood unknown"),
    ] {
        let takeoff = with(&[(&format!("/slopes/0/{left_out}"), Value::Null)]);
        assert!(takeoff.screening.is_none(), "{left_out}");
        let message = format!("on `south` {posts}: not screened, {why}");
        assert!(found(&takeoff).contains(&("not-screened", message.as_str())), "{:?}", found(&takeoff));
    }
}

#[test]
fn posts_that_lack_something_are_left_out_alone() {
    let takeoff =
        with(&[("/slopes/0/blocking", Value::Null), ("/assemblies/foot, short lag/lags", Value::Null)]);
    let screening = takeoff.screening.as_ref().unwrap();
    let name = |slope: usize, post| takeoff.slopes[slope].post_name(post);
    let left_out: Vec<_> =
        screening.not_screened.iter().map(|of| (name(of.slope, of.post), of.reason)).collect();
    assert_eq!(
        left_out,
        [("S1", Unscreened::NoLags), ("S2", Unscreened::NoBlocking), ("M1", Unscreened::NoArray)]
    );
    let array = |slope: usize, array: usize| takeoff.slopes[slope].arrays[array].array.name.as_str();
    for of in &screening.posts {
        assert!(name(of.slope, of.post).starts_with("R-") && array(of.slope, of.array) == "large");
    }
    // The posts left out carry their part of the array all the same.
    let whole = with(&[]);
    let part = |takeoff: &Takeoff| takeoff.screening.as_ref().unwrap().posts.last().unwrap().tributary;
    assert_eq!(part(&takeoff), part(&whole));
}

/// The roof's notes do the sums.
#[test]
fn findings_give_the_numbers() {
    let takeoff = with(&[]);
    assert_eq!(
        found(&takeoff),
        [
            ("not-screened", "on `south` `M1`: not screened, below no array"),
            (
                "uplift-above-resistance",
                "the lags of `S1` are screened with 431 lbf of uplift against 399 lbf, a ratio of 1.08"
            ),
            (
                "lag-too-near",
                "the lags of `S1` lie 1/2 in from the edge of their wood, and 9/16 in are asked"
            ),
            (
                "pilot-hole",
                "the pilot holes of `S1` are 5/16 in; for its lags and wood 5/32 in to 17/64 in are usual"
            ),
        ]
    );
    let takeoff = with(&[("/assemblies/foot, two lags/lags/spacing", Value::Null)]);
    assert!(found(&takeoff).iter().any(|(code, _)| *code == "lag-spacing-unknown"));
}

/// A lag of 1 in with a foot of 3/4 in on sheathing of 15/32 in does not reach the rafter.
#[test]
fn a_lag_that_does_not_reach_the_wood_has_no_ratio() {
    let takeoff = with(&[
        ("/assemblies/foot/lags/length", json!("1 in")),
        ("/assemblies/foot/lags/shim", json!("3/4 in")),
    ]);
    let post = &takeoff.screening.as_ref().unwrap().posts[2];
    assert_eq!((post.thread.length, post.resistance.n(), post.ratio), (Length::ZERO, 0.0, None));
    assert!(post.exceeds());
}

#[test]
fn a_dead_load_above_the_uplift_leaves_no_uplift() {
    let takeoff = with(&[("/screening", json!({ "dead_load": "30 psf", "wind": { "pressure": "20 psf" } }))]);
    let screening = takeoff.screening.as_ref().unwrap();
    assert!(screening.posts.iter().all(|post| post.uplift.n() == 0.0 && post.ratio == Some(0.0)));
}

#[test]
fn a_board_has_its_own_wood_and_depth() {
    let takeoff = with(&[("/slopes/0/blocking/specific_gravity", json!(0.55))]);
    let post = &takeoff.screening.as_ref().unwrap().posts[1];
    let name = takeoff.slopes[post.slope].post_name(post.post);
    assert_eq!((name, post.member, post.specific_gravity), ("S2", Member::Blocking, 0.55));
    assert_eq!(post.thread.limit, ThreadLimit::WoodDepth);
    // The board runs from face to face: the rafter at 324 in ends 8 1/4 in = 209.55 mm from S2, that at 348 in farther.
    assert_eq!(post.distances.end.unwrap().has.mm(), 209.55);
}
