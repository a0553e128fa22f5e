//! Job files of layouts.
use proptest::prelude::*;
use serde_json::{Value, json};

use super::super::{Display, Files, Job, LaidPost, LaidSlope, SlopePoint, laid};
use super::{good, with};
use crate::api::laid_document;
use crate::testing::at;
use crate::units::Length;

/// A job with two arrays, a grid, and a post that stays.
const TEXT: &str = include_str!("../../../../fixtures/least-cost-arrays/job.json");

fn files() -> Files {
    let file = |name: &str, text: &str| (name.to_owned(), text.to_owned());
    Files::from([
        file("rafters.csv", include_str!("../../../../fixtures/least-cost-arrays/rafters.csv")),
        file("prices.csv", include_str!("../../../../fixtures/least-cost-arrays/prices.csv")),
    ])
}

fn post(name: &str, at: SlopePoint, fixed: bool) -> LaidPost {
    LaidPost { name: name.to_owned(), assembly: "foot".to_owned(), at, fixed }
}

/// The text of the layout, and the job that is read from it.
fn read_back(job: &Job, slope: LaidSlope) -> (String, Job) {
    let text = laid_document(&laid(TEXT, job, &[slope]).unwrap());
    let read = Job::read(&text, &files()).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"));
    (text, read)
}

#[test]
fn only_posts_and_arrays_change() {
    let job = Job::read(TEXT, &files()).unwrap();
    // The first array 1 1/2 in to the left and 2 in up, the second stays.
    let arrays = vec![at("22 1/2 in", "32 in"), job.slopes[0].arrays[1].at];
    let posts = vec![
        post("M1", at("34 ft 8 in", "100 in"), true),
        post("large-1-1", at("32 in", "44 1/64 in"), false),
    ];
    let (text, _) = read_back(&job, LaidSlope { slope: 0, arrays, posts });

    let expected = with(
        serde_json::from_str(TEXT).unwrap(),
        &json!({
            "/slopes/0/arrays/0/u": "22 1/2 in",
            "/slopes/0/arrays/0/v": "32 in",
            "/slopes/0/arrays/0/shift": { "left": "4 1/2 in", "right": "7 1/2 in", "down": "8 in", "up": "4 in" },
            "/slopes/0/posts": [
                { "name": "M1", "assembly": "foot", "u": "416 in", "v": "100 in", "fixed": true },
                { "name": "large-1-1", "assembly": "foot", "u": "32 in", "v": "44 1/64 in" },
            ],
            "/slopes/0/post_grids": null,
        }),
    );
    assert_eq!(serde_json::from_str::<Value>(&text).unwrap(), expected);
}

/// Every key stands where it stood.
#[test]
fn fields_keep_their_order() {
    let job = Job::read(TEXT, &files()).unwrap();
    let text = laid_document(&laid(TEXT, &job, &[]).unwrap());
    let without_space = |text: &str| text.split_whitespace().collect::<String>();
    assert_eq!(without_space(&text), without_space(TEXT));
}

#[test]
fn a_list_of_posts_takes_the_place_of_a_file() {
    let job = with(good(), &json!({ "/slopes/0/posts": { "csv": "posts.csv" } }));
    let files =
        Files::from([("posts.csv".to_owned(), "name,assembly,u,v\nA1,post-7,5 ft,5 ft\n".to_owned())]);
    let (text, read) = (job.to_string(), Job::read(&job.to_string(), &files).unwrap());
    let slope = LaidSlope { slope: 0, arrays: vec![], posts: vec![] };
    let text = laid_document(&laid(&text, &read, &[slope]).unwrap());
    assert!(Job::files_named(&text).is_empty());
    assert!(Job::read(&text, &Files::new()).unwrap().slopes[0].posts.is_empty());
}

#[cfg(feature = "command")]
#[test]
fn a_job_in_toml_is_laid_in_json() {
    let text = toml::to_string(&good()).unwrap();
    let job = Job::read_toml(&text, &Files::new()).unwrap();
    let posts = vec![LaidPost { assembly: "mast".to_owned(), ..post("A1", at("5 ft", "5 ft"), false) }];
    let slope = LaidSlope { slope: 0, arrays: vec![], posts };
    let laid = laid_document(&super::super::laid_toml(&text, &job, &[slope]).unwrap());
    let posts = json!([{ "name": "A1", "assembly": "mast", "u": "60 in", "v": "60 in" }]);
    let expected = with(good(), &json!({ "/slopes/0/posts": posts }));
    assert_eq!(serde_json::from_str::<Value>(&laid).unwrap(), expected);
}

#[test]
fn a_text_that_is_none_is_refused() {
    let job = Job::read(TEXT, &files()).unwrap();
    assert_eq!(laid("{", &job, &[]).unwrap_err()[0].code, "syntax");
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
        let job = Job::read(TEXT, &files()).unwrap();
        let job = Job { display: if metric { Display::Metric } else { Display::Imperial }, ..job };
        let moved = |at: SlopePoint| SlopePoint { u: at.u + Length::from_nm(shift[0]), v: at.v + Length::from_nm(shift[1]) };
        let were = &job.slopes[0].arrays;
        let arrays = vec![moved(were[0].at), were[1].at];
        let place = |(i, &(u, v, fixed)): (usize, &(i64, i64, bool))| {
            post(&format!("P{i}"), SlopePoint { u: Length::from_nm(u), v: Length::from_nm(v) }, fixed)
        };
        let posts: Vec<LaidPost> = places.iter().enumerate().map(place).collect();
        let (_, read) = read_back(&job, LaidSlope { slope: 0, arrays: arrays.clone(), posts: posts.clone() });
        let slope = &read.slopes[0];
        prop_assert_eq!(slope.arrays.iter().map(|array| array.at).collect::<Vec<_>>(), arrays);
        for (array, was) in slope.arrays.iter().zip(were) {
            prop_assert_eq!(array.swept(), was.swept());
        }
        let read: Vec<LaidPost> = slope.posts.iter().map(|of| post(&of.name, of.at, of.fixed)).collect();
        prop_assert_eq!(read, posts);
    }
}
