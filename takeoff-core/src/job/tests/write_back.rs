//! Job files of layouts.
use std::sync::Arc;

use proptest::prelude::*;
use serde_json::{Value, json};

use super::super::{Files, Job, write_back};
use super::{good, with};
use crate::geometry::SlopePoint;
use crate::layout::layout;
use crate::model::{Array, Assembly, Display, Post};
use crate::report::laid_document;
use crate::testing::at;
use crate::units::Length;

/// A job with two arrays, grids, and a post that stays.
const TEXT: &str = include_str!("../../../../fixtures/least-cost-arrays/job.json");

fn files() -> Files {
    let file = |name: &str, text: &str| (name.to_owned(), text.to_owned());
    Files::from([
        file("rafters.csv", include_str!("../../../../fixtures/least-cost-arrays/rafters.csv")),
        file("prices.csv", include_str!("../../../../fixtures/least-cost-arrays/prices.csv")),
    ])
}

fn job() -> Job {
    Job::read(TEXT, &files()).unwrap()
}

/// A post of the job's first assembly.
fn post(job: &Job, name: &str, at: SlopePoint, fixed: bool) -> Post {
    let assembly: Arc<Assembly> = job.assemblies[0].clone();
    Post { name: name.to_owned(), assembly, at, fixed, path: String::new() }
}

/// What a job file says of posts.
fn told(job: &Job) -> Vec<(&str, &str, SlopePoint, bool)> {
    let posts = job.slopes[0].posts.iter();
    posts.map(|post| (post.name.as_str(), post.assembly.name.as_str(), post.at, post.fixed)).collect()
}

/// The text of the layout, and the job that is read from it.
fn read_back(job: &Job, now: &Job) -> (String, Job) {
    let text = laid_document(&write_back(TEXT, job, now).unwrap());
    let read = Job::read(&text, &files()).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"));
    (text, read)
}

#[test]
fn only_posts_and_arrays_change() {
    let was = job();
    let mut now = was.clone();
    // 1 1/2 in to the left and 2 in up.
    now.slopes[0].arrays[0].at = at("22 1/2 in", "32 in");
    now.slopes[0].posts.truncate(1);
    now.slopes[0].posts.push(post(&was, "large-1-1", at("32 in", "44 1/64 in"), false));
    let expected = with(
        serde_json::from_str(TEXT).unwrap(),
        &json!({
            "/slopes/0/arrays/0/u": "22 1/2 in",
            "/slopes/0/arrays/0/v": "32 in",
            "/slopes/0/arrays/0/shift": { "left": "4 1/2 in", "right": "7 1/2 in", "down": "8 in", "up": "4 in" },
            "/slopes/0/posts": [
                { "name": "M1", "assembly": "mast", "u": "416 in", "v": "100 in", "fixed": true },
                { "name": "large-1-1", "assembly": "foot", "u": "32 in", "v": "44 1/64 in" },
            ],
            "/slopes/0/post_grids": null,
        }),
    );
    assert_eq!(serde_json::from_str::<Value>(&read_back(&was, &now).0).unwrap(), expected);
}

/// Every key stands where it stood.
#[test]
fn fields_keep_their_order() {
    let without_space = |text: &str| text.split_whitespace().collect::<String>();
    assert_eq!(without_space(&read_back(&job(), &job()).0), without_space(TEXT));
}

#[test]
fn a_list_of_posts_takes_the_place_of_a_file() {
    let text = with(good(), &json!({ "/slopes/0/posts": { "csv": "posts.csv" } })).to_string();
    let csv = "name,assembly,u,v\nA1,post-7,5 ft,5 ft\n".to_owned();
    let was = Job::read(&text, &Files::from([("posts.csv".to_owned(), csv)])).unwrap();
    let unmoved = laid_document(&write_back(&text, &was, &was).unwrap());
    assert_eq!(Job::files_named(&unmoved), ["posts.csv"]);
    let mut now = was.clone();
    now.slopes[0].posts.clear();
    let text = laid_document(&write_back(&text, &was, &now).unwrap());
    assert!(Job::files_named(&text).is_empty());
    assert!(Job::read(&text, &Files::new()).unwrap().slopes[0].posts.is_empty());
}

#[cfg(feature = "command")]
#[test]
fn a_job_in_toml_is_laid_in_json() {
    let text = toml::to_string(&good()).unwrap();
    let was = Job::read_toml(&text, &Files::new()).unwrap();
    let mut now = was.clone();
    now.slopes[0].posts = vec![post(&was, "A1", at("5 ft", "5 ft"), false)];
    let text = laid_document(&super::super::write_back_toml(&text, &was, &now).unwrap());
    let name = &was.assemblies[0].name;
    let posts = json!([{ "name": "A1", "assembly": name, "u": "60 in", "v": "60 in" }]);
    let expected = with(good(), &json!({ "/slopes/0/posts": posts }));
    assert_eq!(serde_json::from_str::<Value>(&text).unwrap(), expected);
}

#[test]
fn a_text_that_is_none_is_refused() {
    assert_eq!(write_back("{", &job(), &job()).unwrap_err()[0].code, "syntax");
}

/// Laid out once more, nothing moves.
#[test]
fn a_layout_of_a_layout_is_the_same() {
    let once = layout(&job()).unwrap_or_else(|problems| panic!("{problems:#?}"));
    let (text, read) = read_back(&job(), &once.job);
    assert_eq!(told(&read), told(&once.job));
    let again = layout(&read).unwrap();
    let places = |job: &Job| job.slopes[0].arrays.iter().map(|array| array.at).collect::<Vec<_>>();
    assert_eq!(places(&again.job), places(&once.job));
    assert_eq!(told(&again.job), told(&once.job));
    assert_eq!(laid_document(&write_back(&text, &read, &again.job).unwrap()), text);
}

proptest! {
    #[test]
    fn exact_lengths_read_back(nm in -Length::LIMIT.nm()..=Length::LIMIT.nm(), parts in -10_000_000_i64..10_000_000) {
        for length in [nm, parts * 396_875].map(Length::from_nm) {
            for display in [Display::Imperial, Display::Metric] {
                prop_assert_eq!(Length::parse(&display.exact(length)), Ok(length));
            }
        }
    }

    /// Wherever a layout moves an array, it may be moved to the same places afterwards, and posts stand where they are.
    #[test]
    fn a_layout_reads_back_to_the_nanometre(
        shift in prop::array::uniform2(-152_400_000_i64..=152_400_000),
        places in prop::collection::vec((1_i64..11_582_400_000, 1_i64..3_600_000_000, any::<bool>()), 0..6),
        metric: bool,
    ) {
        let was = Job { display: if metric { Display::Metric } else { Display::Imperial }, ..job() };
        let mut now = was.clone();
        let slope = &mut now.slopes[0];
        let SlopePoint { u, v } = slope.arrays[0].at;
        slope.arrays[0].at = SlopePoint { u: u + Length::from_nm(shift[0]), v: v + Length::from_nm(shift[1]) };
        let place = |(i, &(u, v, fixed)): (usize, &(i64, i64, bool))| {
            post(&was, &format!("P{i}"), SlopePoint { u: Length::from_nm(u), v: Length::from_nm(v) }, fixed)
        };
        slope.posts = places.iter().enumerate().map(place).collect();
        let (_, read) = read_back(&was, &now);
        prop_assert_eq!(told(&read), told(&now));
        let arrays = |job: &Job| job.slopes[0].arrays.iter().map(|array| array.at).collect::<Vec<_>>();
        prop_assert_eq!(arrays(&read), arrays(&now));
        let may_cover = |job: &Job| job.slopes[0].arrays.iter().map(Array::swept).collect::<Vec<_>>();
        prop_assert_eq!(may_cover(&read), may_cover(&was));
    }
}
