//! What a job says for a layout of posts: rails, shifts, crooked rafters, fixed posts, setbacks from holes.
use serde_json::{Value, json};

use super::{codes, good, read, read_with, with};
use crate::model::{ClampWindow, RafterLine};
use crate::testing::{at, len};
use crate::units::Money;

/// Two rows of three modules on rails.
fn railed() -> Value {
    json!({
        "name": "field", "u": "4 ft", "v": "2 ft", "module_width": "40 in", "module_height": "66 in", "columns": 3,
        "rows": 2, "column_gap": "1 in", "row_gap": "1 in",
        "shift": { "left": "6 in", "up": "3 in" },
        "rails": {
            "assembly": "post-7", "clamps": [["8 in", "16 in"], ["50 in", "58 in"]], "greatest_span": "6 ft",
            "greatest_overhang": "16 in", "least_distance": "6 in", "stagger": 2, "blocking": true,
            "zones": [
                { "name": "rake", "from": ["0", "0"], "to": ["3 ft", "17 ft"], "greatest_span": "4 ft",
                  "greatest_overhang": "0" },
                { "from": ["0", "0"], "to": ["38 ft", "3 ft"], "greatest_span": "5 ft" },
            ],
        },
    })
}

#[test]
fn rails_and_shifts_are_as_written() {
    let job = read(&with(good(), &json!({ "/slopes/0/arrays": [railed()] }))).unwrap();
    let array = &job.slopes[0].arrays[0];
    let shift = array.shift;
    assert_eq!([shift.left, shift.right, shift.down, shift.up], ["6 in", "0", "0", "3 in"].map(len));
    let rails = array.rails.as_ref().unwrap();
    let window = |from, to| ClampWindow { from: len(from), to: len(to) };
    assert_eq!(rails.clamps, [window("8 in", "16 in"), window("50 in", "58 in")]);
    assert_eq!(
        [rails.greatest_span, rails.greatest_overhang, rails.least_distance],
        ["6 ft", "16 in", "6 in"].map(len)
    );
    assert_eq!((rails.stagger, rails.blocking, rails.assembly.name.as_str()), (2, true, "post-7"));
    let zones = rails
        .zones
        .iter()
        .map(|zone| (zone.name.as_str(), zone.from, zone.to, [zone.greatest_span, zone.greatest_overhang]));
    assert_eq!(
        zones.collect::<Vec<_>>(),
        [
            ("rake", at("0", "0"), at("3 ft", "17 ft"), ["4 ft", "0"].map(len)),
            ("zone 2", at("0", "0"), at("38 ft", "3 ft"), ["5 ft", "16 in"].map(len)),
        ]
    );
}

#[test]
fn what_is_left_out_of_rails_asks_for_nothing() {
    let mut array = railed();
    array.as_object_mut().unwrap().remove("shift");
    for field in ["least_distance", "stagger", "blocking", "zones"] {
        array["rails"].as_object_mut().unwrap().remove(field);
    }
    let job = read(&with(good(), &json!({ "/slopes/0/arrays": [array] }))).unwrap();
    let array = &job.slopes[0].arrays[0];
    let rails = array.rails.as_ref().unwrap();
    assert_eq!(array.swept(), array.bounds());
    assert_eq!((rails.least_distance, rails.stagger, rails.blocking), (len("0"), 1, false));
    assert!(rails.zones.is_empty());
}

/// A rail in the highest place of one row, and one in the lowest place of the next: 66 + 1 + 8 − 58 = 17 in.
#[test]
fn rails_of_two_rows_keep_their_distance() {
    let far = |least: &str| {
        let array = with(railed(), &json!({ "/rails/least_distance": least }));
        read(&with(good(), &json!({ "/slopes/0/arrays": [array] })))
    };
    assert!(far("17 in").is_ok());
    let problems = far("17 1/64 in").unwrap_err();
    assert_eq!(codes(&problems), [("rails-too-near", "/slopes/0/arrays/0/rails/clamps")]);
    assert_eq!(
        problems[0].message,
        "the highest clamp window of `field` and the lowest of the next row allow rails nearer to each other than the \
         least distance of `17 1/64 in`"
    );
}

#[test]
fn crooked_rafters_are_measured_at_both_ends() {
    let lines = json!([{ "lower": "8 in", "upper": "8 in" }, { "lower": "32 in", "upper": "33 in" }]);
    let rafters = json!({ "width": "1 1/2 in", "lines": lines });
    let job = read(&with(good(), &json!({ "/slopes/0/rafters": rafters }))).unwrap();
    let read = job.slopes[0].rafters.as_ref().unwrap();
    let line = |lower, upper| RafterLine { lower: len(lower), upper: len(upper) };
    assert_eq!(read.lines, [line("8 in", "8 in"), line("32 in", "33 in")]);
    assert_eq!([read.low, read.high], ["0", "17 ft"].map(len));
    assert_eq!(read.centre(1, len("51 in")), len("32 1/4 in"));

    let from_csv = json!({ "width": "1 1/2 in", "lines": { "csv": "rafters.csv" } });
    let files = [("rafters.csv", "upper_in,lower_in\n8,8\n33,32\n")];
    let job = read_with(&with(good(), &json!({ "/slopes/0/rafters": from_csv })), &files).unwrap();
    assert_eq!(job.slopes[0].rafters.as_ref().unwrap().lines, read.lines);
}

#[test]
fn fixed_posts_are_marked() {
    let job = read(&with(good(), &json!({ "/slopes/0/posts/1/fixed": true }))).unwrap();
    let fixed = |job: &super::Job| job.slopes[0].posts.iter().map(|post| post.fixed).collect::<Vec<_>>();
    assert_eq!(fixed(&job)[..3], [false, true, false]);
    let job = with(good(), &json!({ "/slopes/0/posts": { "csv": "posts.csv" } }));
    let csv = "fixed,name,assembly,u,v\nTRUE,A1,post-7,5 ft,5 ft\n,A2,post-7,8 ft,5 ft\nfalse,A3,post-7,9 ft,9 ft\n";
    assert_eq!(fixed(&read_with(&job, &[("posts.csv", csv)]).unwrap()), [true, false, false]);
}

/// A vent of 2 × 2 ft at 20 ft, 9 ft: a post 12 in left of it, one 12 in from its lower right corner each way.
#[test]
fn posts_keep_away_from_holes() {
    let vent = json!([["20 ft", "9 ft"], ["22 ft", "9 ft"], ["22 ft", "11 ft"], ["20 ft", "11 ft"]]);
    let found = |u: &str, v: &str, setback: &str| -> Vec<String> {
        let post = json!({ "name": "P", "assembly": "post-7", "u": u, "v": v });
        let job = with(
            good(),
            &json!({
                "/slopes/0/holes": [{ "name": "vent", "outline": vent }], "/slopes/0/posts": [post],
                "/slopes/0/setbacks/hole": setback,
            }),
        );
        read(&job).unwrap().findings().iter().map(|finding| finding.message.clone()).collect()
    };
    assert_eq!(found("19 ft", "10 ft", "12 in"), [""; 0]);
    assert_eq!(
        found("19 ft", "10 ft", "12 1/4 in"),
        ["the post `P` stands 12 in from the edge of a hole, within its setback of 12 1/4 in"]
    );
    assert_eq!(found("23 ft", "8 ft", "16 31/32 in"), [""; 0]);
    assert_eq!(found("23 ft", "8 ft", "17 in").len(), 1);
}

#[test]
fn a_cost_of_failing_is_listed() {
    let job = read(&with(good(), &json!({ "/practice/cost_of_failing": "250.00" }))).unwrap();
    assert_eq!(job.practice.cost_of_failing, Some(Money::new("250".parse().unwrap())));
    let listed = job.assumptions.iter().find(|listed| listed.what.starts_with("cost of each post")).unwrap();
    assert!(listed.set_by_job, "{listed:?}");
}
