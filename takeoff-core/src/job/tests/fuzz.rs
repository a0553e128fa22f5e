//! Whatever stands in a job file, it is read or refused with problems in places that it has.
use proptest::prelude::*;
use serde_json::{Value, json};

use super::{good, read};

/// Pointers to all values of a document but the whole of it.
fn pointers(value: &Value, at: &str, found: &mut Vec<String>) {
    let children: Vec<(String, &Value)> = match value {
        Value::Object(fields) => fields.iter().map(|(key, child)| (key.clone(), child)).collect(),
        Value::Array(items) => items.iter().enumerate().map(|(i, child)| (i.to_string(), child)).collect(),
        _ => Vec::new(),
    };
    for (key, child) in children {
        let at = format!("{at}/{key}");
        pointers(child, &at, found);
        found.push(at);
    }
}

/// A job that uses what a job can have.
fn rich() -> Value {
    let mut job = super::with(
        good(),
        &json!({
            "/slopes/0/place": { "points": [["0", "0", "0"], ["4 m", "0", "0"], ["0", "12 m", "5 m"]] },
            "/slopes/0/holes": [{ "name": "vent", "outline": [["1 ft", "9 ft"], ["2 ft", "9 ft"], ["2 ft", "10 ft"]] }],
            "/slopes/0/overhang": "2 in",
            "/slopes/0/battens": { "height": "1 in" },
            "/slopes/0/post_grids": [{ "name": "G", "assembly": "post-7", "u": "5 ft", "v": "9 ft", "columns": 3,
                "column_spacing": "4 ft", "rows": 2, "row_spacing": "3 ft" }],
            "/assemblies/post-7/hole_saws": ["2 in", "2 1/2 in"],
            "/assemblies/mast/deck_flashing/dried_in": "three_course",
            "/slopes/0/rafters": { "width": "1 1/2 in", "lines": [
                { "lower": "4 ft 8 in", "upper": "4 ft 8 in" }, { "lower": "8 ft 8 in", "upper": "8 ft 9 in" }] },
            "/slopes/0/setbacks/hole": "6 in",
            "/slopes/0/posts/0/fixed": true,
            "/slopes/0/arrays": [{ "name": "field", "u": "4 ft", "v": "2 ft", "module_width": "40 in",
                "module_height": "66 in", "columns": 2, "rows": 1, "column_gap": "1 in",
                "shift": { "left": "6 in", "up": "3 in" },
                "rails": { "assembly": "post-7", "clamps": [["8 in", "16 in"], ["50 in", "58 in"]],
                    "greatest_span": "6 ft", "greatest_overhang": "16 in", "least_distance": "6 in", "stagger": 2,
                    "zones": [{ "from": ["0", "0"], "to": ["3 ft", "17 ft"], "greatest_span": "4 ft" }] } }],
            "/practice/cost_of_failing": "250",
            "/practice/three_course_allowed": true,
            "/practice/mesh_width": "4 in",
            "/practice/cement_coats": 2,
            "/assemblies/post-7/dabs": [{ "count": 2, "volume": "2 mL" }],
        }),
    );
    job["practice"]["cartridge"] = json!("300 mL");
    job
}

fn odd_value() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(json!(null)),
        Just(json!({})),
        Just(json!([])),
        Just(json!(true)),
        Just(json!([["0", "0"], ["1 ft", "0"], ["0", "1 ft"]])),
        Just(json!({ "csv": "x.csv" })),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        (-20_000_i64..20_000).prop_map(|n| json!(format!("{n} mm"))),
        (0_u64..40).prop_map(|n| json!(10_u64.pow(u32::try_from(n).unwrap() / 3))),
        (-10.0..90.0).prop_map(|n: f64| json!(format!("{n} deg"))),
        Just(json!("10 km")),
        Just(json!("10000 m")),
        Just(json!("-10000 m")),
        Just(json!("0.000001 mm")),
        Just(json!("0")),
        prop::sample::select(vec![
            "post-7",
            "three_course",
            "A1",
            "flat-13",
            "eave",
            "half",
            "plumb",
            "double",
            "1/3",
            "hung"
        ])
        .prop_map(Value::from),
        ".{0,12}".prop_map(Value::from),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, ..ProptestConfig::default() })]

    #[test]
    fn a_spoilt_job_is_read_or_refused(changes in prop::collection::vec((any::<prop::sample::Index>(), odd_value()), 1..4)) {
        let mut job = rich();
        for (index, value) in changes {
            let mut places = Vec::new();
            pointers(&job, "", &mut places);
            if let Some(place) = places.get(index.index(places.len().max(1))) {
                *job.pointer_mut(place).unwrap() = value;
            }
        }
        match read(&job) {
            Ok(read) => prop_assert!(!read.slopes.is_empty()),
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(job.pointer(&problem.path).is_some(), "{:#?}", problem);
                }
            }
        }
    }
}

#[test]
fn the_rich_job_is_good() {
    let read = read(&rich()).unwrap_or_else(|problems| panic!("{problems:#?}"));
    assert_eq!(read.slopes[0].posts.len(), 20);
}
