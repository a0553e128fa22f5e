//! What must not depend on where a roof lies, how it is written down, or in which order.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use proptest::prelude::*;
use serde_json::{Value, json};
use takeoff_core::Files;
use takeoff_core::api::takeoff_json;
use tilepost_tests::{Case, takeoff_of};

/// A roof in sixteenths of an inch: 38 × 17 ft, tile 16 1/2 × 13 in, 12 in cover.
#[derive(Clone, Debug)]
struct Roof {
    posts: Vec<(i64, i64)>,
    half_bond: bool,
    lap_left: bool,
    first_joint: i64,
    /// Where the outline's lower left corner lies.
    at: (i64, i64),
    /// Whether it is written in millimetres.
    metric: bool,
    /// Posts lower down are dried in with three-course work.
    three_course_below: i64,
}

const WIDTH: i64 = 38 * 12 * 16;
const HEIGHT: i64 = 17 * 12 * 16;
const COVER: i64 = 12 * 16;

impl Roof {
    fn length(&self, sixteenths: i64) -> String {
        // Both are exact: 1/16 in is 0.0625 in and 1.5875 mm.
        let (ten_thousandths, unit) = if self.metric { (15_875, "mm") } else { (625, "in") };
        let scaled = sixteenths * ten_thousandths;
        let sign = if scaled < 0 { "-" } else { "" };
        format!("{sign}{}.{:04} {unit}", scaled.abs() / 10_000, scaled.abs() % 10_000)
    }

    fn u(&self, u: i64) -> String {
        self.length(self.at.0 + u)
    }

    fn v(&self, v: i64) -> String {
        self.length(self.at.1 + v)
    }

    fn job(&self) -> Value {
        let l = |inches: f64| self.length((inches * 16.0) as i64);
        let posts = self.posts.iter().enumerate();
        let posts: Vec<Value> = posts
            .map(|(i, &(u, v))| {
                let assembly = if v < self.three_course_below { "three-course" } else { "post" };
                json!({"name": format!("A{i}"), "assembly": assembly, "u": self.u(u), "v": self.v(v)})
            })
            .collect();
        // The same from the left and from the right.
        let rafters: Vec<String> = (0..19).map(|i| self.u(192 + i * 384)).collect();
        let corner = |u, v| json!([self.u(u), self.v(v)]);
        let assembly = |dried_in: &str| {
            json!({
                "post_diameter": l(1.5), "clearance": l(0.25), "axis": "normal",
                "deck_flashing": {
                    "width": l(10.0), "down": l(4.0), "up": l(7.0), "cone_diameter": l(2.0), "dried_in": dried_in,
                },
                "top_flashing": {"width": l(16.0), "down": l(6.0), "up": l(11.0)},
                "beads": [{"where": "deck flange", "diameter": l(0.375)}],
                "items": [{"item": "lag screw", "count": 2}],
            })
        };
        json!({
            "format": "tilepost-job/1", "name": "invariants", "display": "imperial",
            "tiles": {"flat": {
                "length": l(16.5), "width": l(13.0), "cover": l(12.0), "least_head_lap": l(3.0), "thickness": l(1.0),
                "lap_side": if self.lap_left { "left" } else { "right" }, "held": "nailed", "profile": {"shape": "flat"},
            }},
            "underlayments": {"felt": {"sheet_width": l(36.0), "head_lap": l(2.0)}},
            "assemblies": {"post": assembly("underlayment"), "three-course": assembly("three_course")},
            "practice": {"three_course_allowed": true, "mesh_width": l(3.5)},
            "slopes": [{
                "name": "south", "pitch": "5:12",
                "outline": [corner(0, 0), corner(WIDTH, 0), corner(WIDTH, HEIGHT), corner(0, HEIGHT)],
                "edges": ["eave", "rake", "ridge", "rake"], "tile": "flat",
                "courses": {"first_nose": self.v(-24), "exposure": l(13.25)},
                "columns": {
                    "first_joint": self.u(self.first_joint),
                    "bond": if self.half_bond { "half" } else { "straight" },
                },
                "underlayment": {"kind": "felt", "first_lap_line": self.v(34 * 16)},
                "rafters": {"at": rafters, "width": l(1.5)},
                "posts": posts,
            }],
        })
    }

    /// The roof seen in a mirror that stands along the slope.
    fn mirrored(&self) -> Roof {
        Roof {
            posts: self.posts.iter().map(|&(u, v)| (WIDTH - u, v)).collect(),
            lap_left: !self.lap_left,
            first_joint: (WIDTH - self.first_joint).rem_euclid(COVER),
            ..self.clone()
        }
    }
}

prop_compose! {
    fn roof()(
        posts in prop::collection::vec((16..WIDTH - 16, 16..HEIGHT - 16), 1..8),
        half_bond: bool, lap_left: bool,
        first_joint in 0..COVER,
        three_course_below in 0..HEIGHT,
    ) -> Roof {
        Roof { posts, half_bond, lap_left, first_joint, at: (0, 0), metric: false, three_course_below }
    }
}

/// What a crew would see: the counts, what to bring, and of each post what it meets, its deck work and its margins.
fn seen(takeoff: &Value) -> Value {
    let of_post = |post: &Value| {
        json!([
            post["situation"],
            post["severed"],
            post["deck"]["method"],
            post["top"]["tuck_mm"],
            post["nearest"]["up_mm"],
            post["margin"]["down_mm"],
            post["margin"]["up_mm"],
        ])
    };
    let posts: Vec<Value> = takeoff["slopes"][0]["posts"].as_array().unwrap().iter().map(of_post).collect();
    json!([takeoff["counts"], bring(takeoff), posts])
}

fn bring(takeoff: &Value) -> Vec<Value> {
    let lines = takeoff["materials"].as_array().unwrap();
    lines.iter().map(|line| json!([line["item"], line["unit"], line["bring"]])).collect()
}

/// Numbers may differ in the last bits where sums are taken in another order.
fn alike(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Array(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| alike(a, b)),
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len() && a.iter().all(|(key, a)| b.get(key).is_some_and(|b| alike(a, b)))
        }
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().unwrap(), b.as_f64().unwrap());
            (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
        }
        _ => a == b,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn moved_as_a_whole(roof in roof(), u in -90_000i64..90_000, v in -90_000i64..90_000) {
        let (here, there) = (seen(&takeoff_of(&roof.job())), seen(&takeoff_of(&Roof { at: (u, v), ..roof }.job())));
        prop_assert!(alike(&here, &there), "{here:#} {there:#}");
    }

    #[test]
    fn seen_in_a_mirror(roof in roof()) {
        let (here, there) = (takeoff_of(&roof.job()), takeoff_of(&roof.mirrored().job()));
        prop_assert!(alike(&seen(&here), &seen(&there)), "{:#} {:#}", seen(&here), seen(&there));
        let posts = |takeoff: &Value| takeoff["slopes"][0]["posts"].as_array().unwrap().clone();
        for (post, mirrored) in posts(&here).iter().zip(&posts(&there)) {
            prop_assert_eq!(&post["margin"]["left_mm"], &mirrored["margin"]["right_mm"]);
        }
    }

    #[test]
    fn renamed_and_in_another_order(roof in roof(), turn in 0usize..8) {
        let mut other = roof.clone();
        let turn = turn % other.posts.len();
        other.posts.rotate_left(turn);
        other.posts.reverse();
        let (here, there) = (takeoff_of(&roof.job()), takeoff_of(&other.job()));
        prop_assert!(alike(&here["counts"], &there["counts"]), "{:#} {:#}", here["counts"], there["counts"]);
        prop_assert!(alike(&json!(bring(&here)), &json!(bring(&there))));
    }

    /// To the byte: nothing remembers in which unit a length was written.
    #[test]
    fn written_in_another_unit(roof in roof()) {
        let metric = Roof { metric: true, ..roof.clone() };
        prop_assert_eq!(takeoff_of(&roof.job()), takeoff_of(&metric.job()));
    }

    /// A post far from the others: at the right end, where none of theirs reaches.
    #[test]
    fn a_far_post_lowers_no_need(roof in roof(), v in 16..HEIGHT - 16) {
        let mut fewer = roof.clone();
        fewer.posts.retain(|&(u, _)| u < WIDTH - 100 * 16);
        prop_assume!(!fewer.posts.is_empty());
        let mut more = fewer.clone();
        more.posts.push((WIDTH - 30 * 16, v));
        let (fewer, more) = (takeoff_of(&fewer.job()), takeoff_of(&more.job()));
        for line in fewer["materials"].as_array().unwrap() {
            let lines = more["materials"].as_array().unwrap();
            let same = lines.iter().find(|other| other["item"] == line["item"]).unwrap();
            prop_assert!(same["need"].as_f64() >= line["need"].as_f64(), "{line} {same}");
        }
    }

    /// Whatever is done to a job's text, there is an answer: a takeoff or problems.
    #[test]
    fn every_text_gets_an_answer(case in 0usize..64, at in any::<prop::sample::Index>(), put in "[ -~]{0,6}", cut in 0usize..6) {
        let cases = Case::all().unwrap();
        let (mut text, files) = cases[case % cases.len()].job().unwrap();
        let from = text.floor_char_boundary(at.index(text.len()));
        let to = text.floor_char_boundary((from + cut).min(text.len()));
        text.replace_range(from..to, &put);
        let answer: Value = serde_json::from_str(&takeoff_json(&text, &files)).unwrap();
        prop_assert!(answer["ok"] == true || !answer["problems"].as_array().unwrap().is_empty());
    }

    #[test]
    fn the_same_job_gives_the_same_bytes(roof in roof()) {
        let text = roof.job().to_string();
        prop_assert_eq!(takeoff_json(&text, &Files::new()), takeoff_json(&text, &Files::new()));
    }
}

/// Posts spread evenly over a large field: `(L − E + 2ρ)/E` of them cut two courses or more, and of the others
/// `(S + 2ρ)/C` cut two tiles side by side. The bound is five standard deviations of the binomial.
#[test]
fn shares_of_evenly_spread_posts() {
    const POSTS: i64 = 4000;
    // A low-discrepancy walk by the plastic number (M. Roberts 2018, the R2 sequence): more even than chance.
    let step = |i: i64, ratio: f64, span: i64| ((i as f64 * ratio).fract() * span as f64) as i64;
    let posts = (1..=POSTS)
        .map(|i| {
            (
                200 + step(i, 0.754_877_666_246_692_7, 30 * COVER),
                400 + step(i, 0.569_840_290_998_053_2, 10 * 212),
            )
        })
        .collect();
    let roof = Roof {
        posts,
        half_bond: true,
        lap_left: true,
        first_joint: 0,
        at: (0, 0),
        metric: false,
        three_course_below: 0,
    };
    // One at a time, so that no two are judged together.
    let mut counts = [0.0; 2];
    let mut one_course = 0.0;
    for post in &roof.posts {
        let takeoff = takeoff_of(&Roof { posts: vec![*post], ..roof.clone() }.job());
        match takeoff["slopes"][0]["posts"][0]["situation"].as_str().unwrap() {
            "two_courses" | "three" | "four_or_more" => counts[0] += 1.0,
            situation => {
                one_course += 1.0;
                counts[1] += f64::from(situation == "two_side_by_side");
            }
        }
    }
    let expected = [(16.5 - 13.25 + 2.0) / 13.25, (1.0 + 2.0) / 12.0];
    for (found, (share, among)) in counts.iter().zip(expected.iter().zip([POSTS as f64, one_course])) {
        let bound = 5.0 * (share * (1.0 - share) / among).sqrt();
        assert!((found / among - share).abs() < bound, "{} of {among}, expected {share}", found / among);
    }
}
