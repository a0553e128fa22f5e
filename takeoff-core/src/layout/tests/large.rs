//! Large jobs and large amounts.
use super::super::{additive, layout, place_posts};
use super::costs::{labour, priced};
use super::jobs::{array, with_arrays};
use crate::geometry::SlopePoint;
use crate::model::{Action, Job, Post};
use crate::testing::*;

/// A gable of 250 × 170 ft with fixed posts, six feet apart along the eave and 20 in up the slope.
fn fixed_posts(count: usize) -> Job {
    let mut job = priced(&[(56.0, 39.0)]);
    let slope = &mut job.slopes[0];
    slope.outline = vec![at("0", "0"), at("250 ft", "0"), at("250 ft", "170 ft"), at("0", "170 ft")];
    slope.noses = (0..154).map(|course| inches(13.25 * f64::from(course))).collect();
    slope.rafters = None;
    let first = slope.posts[0].clone();
    let post = |i: usize| Post {
        name: format!("P{i}"),
        at: SlopePoint { u: inches(48.0 + 72.0 * (i % 40) as f64), v: inches(24.0 + 20.0 * (i / 40) as f64) },
        fixed: true,
        ..first.clone()
    };
    slope.posts = (0..count).map(post).collect();
    job
}

/// Each post is priced on a job with itself alone. Were that job a copy of the whole one, 10 000 posts would mean 100
/// million copied posts, and a test of more than a minute.
#[test]
fn additive_cost_of_many_posts_takes_linear_time() {
    let few = fixed_posts(40);
    let one_row = additive(&few).unwrap();
    let mut many = few.clone();
    many.slopes[0].posts = few.slopes[0].posts.iter().cycle().take(10_000).cloned().collect();
    let all = additive(&many).unwrap();
    let rows = 10_000.0 / 40.0;
    assert!(
        (all.total() / rows / one_row.total() - 1.0).abs() < 1e-9,
        "{} and {}",
        all.total(),
        one_row.total()
    );
}

/// The whole layout of a job with fixed posts only: every post stays.
#[test]
fn a_layout_without_arrays_leaves_fixed_posts() {
    let job = fixed_posts(200);
    let laid = layout(&job).unwrap();
    let places = |job: &Job| job.slopes[0].posts.iter().map(|post| post.at).collect::<Vec<_>>();
    assert_eq!(places(&laid.job), places(&job));
    assert_eq!(laid.layout.after.posts, 200);
    assert!(laid.layout.nudges.is_empty());
}

/// At 999 999 999.999999 an hour and 1 000 000 minutes a post, one post costs 1.7 × 10¹³: beyond the bound of the
/// objective, whose sums stop there and do not turn negative.
#[test]
fn money_beyond_the_bound_is_refused() {
    let rate = "999999999.999999";
    let job = |minutes: i64| {
        let job = with_arrays(vec![array("west", "2 ft", "24 in", 4)]);
        Job { bid: Some(labour(rate, &[(Action::Set, minutes)])), ..job }
    };
    let problems = place_posts(&job(1_000_000)).unwrap_err();
    assert_eq!(problems[0].code, "too-much-money");
    assert_eq!(problems[0].path, "/slopes/0/arrays/0");
    assert_eq!(problems[0].message, "the posts of the array `west` cost more than 9.2 × 10¹² USD");
    assert_eq!(layout(&job(1_000_000)).unwrap_err(), problems);

    // Each of 16 posts or more costs 10¹², within the bound; their sum is beyond it.
    assert_eq!(place_posts(&job(60_000)).unwrap_err(), problems);

    let laid = layout(&job(60)).unwrap().layout;
    let posts = laid.after.posts as f64;
    let [array, all] = [laid.arrays[0].additive_cost, laid.after.additive_cost].map(|cost| cost.to_f64());
    assert!((array / posts / 1e9 - 1.0).abs() < 1e-6 && (all / posts / 1e9 - 1.0).abs() < 1e-6);
}
