//! As bid and as built: what changed, and what the exit status says of it.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::fs;
use std::path::Path;
use std::process::Output;

use takeoff_core::units::Length;
use takeoff_core::{Comparison, Job, Takeoff, compare, takeoff};
use tilepost_tests::{Case, command};

fn plain_gable() -> Case {
    Case::all().unwrap().into_iter().find(|case| case.name == "plain-gable").unwrap()
}

fn bid() -> Job {
    let (text, files) = plain_gable().job().unwrap();
    Job::read(&text, &files).unwrap()
}

fn built() -> String {
    fs::read_to_string(plain_gable().folder.join("built.csv")).unwrap()
}

fn taken(job: &Job) -> Takeoff {
    takeoff(job).unwrap()
}

fn run(bid: &Path, as_built: &Path) -> Output {
    command().arg("compare").arg(bid).arg(as_built).arg("--json").output().unwrap()
}

#[test]
fn posts_as_built_moved_came_and_went() {
    let bid = bid();
    let Comparison { posts, counts, .. } =
        compare(&taken(&bid), &taken(&bid.as_built("built.csv", &built()).unwrap()));
    let moved: Vec<_> = posts
        .iter()
        .map(|post| (post.post.as_str(), post.moved().map(|moved| moved.map(Length::mm))))
        .collect();
    let [a3, a6] = [[0.0, 31.75], [609.6, 0.0]]; // 1 1/4 in up, 24 in right
    assert_eq!(moved, [("A3", Some(a3)), ("A6", Some(a6)), ("M1", None), ("B7", None)]);
    assert!(posts[2].as_built.is_none() && posts[3].bid.is_none());
    assert!(counts.iter().all(|count| count.what != "posts"), "one came, one went");
}

#[test]
fn the_cost_of_a_change_is_told() {
    let bid = bid();
    let (bid, built) = (taken(&bid), taken(&bid.as_built("built.csv", &built()).unwrap()));
    let compared = compare(&bid, &built);
    let price = compared.costs.iter().find(|cost| cost.what == "price").unwrap();
    let [as_bid, as_built] = [&bid, &built].map(|takeoff| takeoff.bid.as_ref().unwrap());
    assert_eq!((price.bid, price.as_built), (as_bid.totals.price, as_built.totals.price));
    let cost = |item: &str| {
        let line = compared.materials.iter().find(|line| line.item.name() == item).unwrap();
        [line.bid, line.as_built].map(|amount| amount.unwrap().cost.map(|cost| cost.to_string()))
    };
    // One tile more at 3.85; a board without a price.
    assert_eq!(cost("spare tile flat-13"), [Some("30.80".to_owned()), Some("34.65".to_owned())]);
    assert_eq!(cost("blocking board"), [None, None]);
    let mut unpriced = built;
    unpriced.bid = None;
    let compared = compare(&bid, &unpriced);
    assert!(compared.costs.is_empty());
    let amounts = compared.materials.iter().flat_map(|line| [line.bid, line.as_built]).flatten();
    assert!(amounts.into_iter().all(|amount| amount.cost.is_none()));
}

#[test]
fn there_and_back_is_the_same_the_other_way_round() {
    let bid = bid();
    let (bid, built) = (taken(&bid), taken(&bid.as_built("built.csv", &built()).unwrap()));
    let (there, back) = (compare(&bid, &built), compare(&built, &bid));
    let items = |compared: &Comparison| {
        let mut items: Vec<_> = compared.materials.iter().map(|line| line.item.clone()).collect();
        items.sort();
        items
    };
    assert_eq!(items(&there), items(&back));
    for line in &there.materials {
        let other = back.materials.iter().find(|other| other.item == line.item).unwrap();
        assert_eq!((line.bid, line.as_built), (other.as_built, other.bid));
    }
    assert!(!there.materials.is_empty() && there.posts.len() == back.posts.len());
}

#[test]
fn every_fixture_is_like_itself() {
    for case in Case::all().unwrap() {
        let (text, files) = case.job().unwrap();
        let taken = taken(&Job::read(&text, &files).unwrap());
        let compared = compare(&taken, &taken);
        assert!(!compared.changed() && compared.posts.is_empty() && compared.materials.is_empty());
    }
}

#[test]
fn the_status_tells_whether_anything_changed() {
    let case = plain_gable();
    let job = case.path();
    let same = run(&job, &job);
    assert_eq!(same.status.code(), Some(0));
    let other = run(&job, &case.folder.join("built.csv"));
    assert_eq!(other.status.code(), Some(3));
    let told: serde_json::Value = serde_json::from_slice(&other.stdout).unwrap();
    assert_eq!(told["comparison"]["posts"].as_array().unwrap().len(), 4);
    assert_eq!(run(&job, Path::new("nowhere.csv")).status.code(), Some(2));
}

#[test]
fn a_bad_file_is_told_by_its_lines() {
    let text =
        built().replacen("south,A2,post-7", "south,A1,post-9", 1).replacen("8 ft 8 in,6", "8 feat,6", 1);
    let problems = bid().as_built("built.csv", &text).unwrap_err();
    let told: Vec<&str> = problems.iter().map(|problem| problem.message.as_str()).collect();
    for start in [
        "`built.csv` line 3, column `assembly`: there is no assembly `post-9`",
        "`built.csv` line 3: two posts are called `A1`",
        "`built.csv` line 9, column `u`: ",
    ] {
        assert!(told.iter().any(|told| told.starts_with(start)), "{start} is not in {told:?}");
    }
    let none = bid().as_built("built.csv", "slope,name,u,v\n").unwrap_err();
    assert!(none[0].message.contains("there is no column `assembly`"), "{none:?}");
    assert!(bid().as_built("built.csv", "slope,name,assembly,u,v\n").unwrap().slopes()[0].posts().is_empty());
}
