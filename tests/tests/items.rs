//! Items of assemblies that have the name of a line which the takeoff works out.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use serde_json::{Value, json};
use takeoff_core::api::read_and_take_off;
use takeoff_core::compare::compare;
use takeoff_core::job::Files;
use takeoff_core::materials::Material;
use takeoff_core::model::Job;
use takeoff_core::order::{Order, Ordered, order};
use takeoff_core::takeoff::{Takeoff, takeoff};
use tilepost_tests::Case;

/// The plain gable whose posts bring some items more, one each.
fn gable(name: &str, items: &[&str]) -> (String, Files) {
    let case = Case::all().unwrap().into_iter().find(|case| case.name == "plain-gable").unwrap();
    let (text, files) = case.job().unwrap();
    let mut job: Value = serde_json::from_str(&text).unwrap();
    job["name"] = json!(name);
    job["practice"]["blade_life"] = json!("25 m");
    let of_post = job["assemblies"]["post-7"]["items"].as_array_mut().unwrap();
    of_post.extend(items.iter().map(|item| json!({ "item": item, "count": 1 })));
    (job.to_string(), files)
}

fn taken(name: &str, items: &[&str]) -> (Job, Takeoff) {
    let (text, files) = gable(name, items);
    let job = Job::read(&text, &files).unwrap();
    let takeoff = takeoff(&job).unwrap();
    (job, takeoff)
}

fn ordered(jobs: &[(Job, Takeoff)]) -> Order {
    let jobs: Vec<_> = jobs.iter().map(|(job, takeoff)| Ordered { job, takeoff }).collect();
    order(&jobs).unwrap()
}

const COUNTS: [&str; 3] = ["saw blade", "staple", "fastener for flat-13"];

/// Posts of the assembly that brings the items.
fn posts(takeoff: &Takeoff) -> f64 {
    let posts = takeoff.slopes.iter().flat_map(|slope| &slope.posts);
    posts.filter(|post| post.assembly.name() == "post-7").count() as f64
}

fn need(takeoff: &Takeoff, name: &str) -> f64 {
    let lines: Vec<_> = takeoff.materials.iter().filter(|line| line.item.name() == name).collect();
    assert_eq!(lines.len(), 1, "lines `{name}`");
    lines[0].need
}

#[test]
fn items_add_to_the_line_of_their_name() {
    let (bare, with) = (taken("bare", &[]).1, taken("with", &COUNTS).1);
    assert!(posts(&with) > 0.0);
    for name in COUNTS {
        let (before, after) = (need(&bare, name), need(&with, name));
        assert!((after - before - posts(&with)).abs() < 1e-9, "{name}: {before}, {after}");
    }
    // Saw blades at 34.00 in the fixture's price list, whole ones: those of the posts and the one that is begun.
    let bid = with.bid.as_ref().unwrap();
    let blades = bid.lines.iter().find(|line| line.item == Material::Blade).unwrap();
    let whole = need(&with, "saw blade").ceil();
    assert_eq!(blades.cost.to_string(), format!("{:.2}", 34.0 * whole));
}

#[test]
fn an_order_keeps_the_items_of_all_jobs() {
    let jobs = [taken("one", &COUNTS), taken("two", &COUNTS)];
    let order = ordered(&jobs);
    for name in COUNTS {
        let of_jobs: f64 = jobs.iter().map(|(_, takeoff)| need(takeoff, name)).sum();
        let lines: Vec<_> = order.materials.iter().filter(|line| line.item.name() == name).collect();
        assert_eq!(lines.len(), 1, "lines `{name}`");
        let line = lines[0];
        assert!((line.need - of_jobs).abs() < 1e-9, "{name}: {} for {of_jobs}", line.need);
    }
    let alone = ordered(&jobs[..1]);
    let bid = jobs[0].1.bid.as_ref().unwrap();
    assert_eq!(alone.purchase.unwrap().materials, bid.totals.materials);
}

#[test]
fn a_job_is_like_itself() {
    let (_, takeoff) = taken("one", &COUNTS);
    assert!(!compare(&takeoff, &takeoff).changed());
}

#[test]
fn an_item_that_can_not_add_to_its_line_is_refused() {
    for name in ["spare tile flat-13", "sealant cartridge", "blocking board", "felt-30, patches"] {
        let (text, files) = gable("one", &[name]);
        let problems = read_and_take_off(&text, &files).unwrap_err();
        let codes: Vec<&str> = problems.iter().map(|problem| problem.code.as_str()).collect();
        assert_eq!(codes, ["item-is-worked-out"], "{name}");
        assert!(problems[0].path.starts_with("/assemblies/post-7/items/"), "{}", problems[0].path);
    }
}
