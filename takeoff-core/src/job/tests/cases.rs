//! A case for each code: what is changed in a good job, and the one problem that comes of it.
use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::{codes, good, read_with, with};
use crate::model::{Code, Problem, Severity};
use crate::{deck, layout, units};

struct Case {
    code: &'static str,
    path: &'static str,
    changes: Value,
    files: &'static [(&'static str, &'static str)],
}

fn case(code: &'static str, path: &'static str, changes: Value) -> Case {
    Case { code, path, changes, files: &[] }
}

fn case_with(
    code: &'static str,
    path: &'static str,
    changes: Value,
    files: &'static [(&'static str, &'static str)],
) -> Case {
    Case { code, path, changes, files }
}

/// The job with a price list of its own.
fn priced(code: &'static str, csv: &'static str) -> Case {
    let files = Box::leak(Box::new([("prices.csv", csv)]));
    case_with(code, "/prices", json!({ "/prices": "prices.csv" }), files)
}

fn labour(rate_per_hour: &str, minutes: Value) -> Value {
    json!({ "/bid": { "currency": "USD", "labour": { "rate_per_hour": rate_per_hour, "minutes": minutes } } })
}

const TILE: &str = "/tiles/flat-13";
const POST: &str = "/assemblies/post-7";

/// Modules 40 in wide, 1 in apart, in one row.
fn array(name: &str, u: &str, columns: u32) -> Value {
    json!({
        "name": name, "u": u, "v": "2 ft", "module_width": "40 in", "module_height": "66 in",
        "columns": columns, "rows": 1, "column_gap": "1 in",
    })
}

/// The same on rails, to be moved by up to 6 in, with something changed.
fn railed(name: &str, u: &str, changes: Value) -> Value {
    let mut railed = array(name, u, 3);
    railed["shift"] = json!({ "left": "6 in", "right": "6 in", "up": "6 in" });
    railed["rails"] = json!({
        "assembly": "post-7", "clamps": [["8 in", "16 in"], ["50 in", "58 in"]], "least_distance": "6 in",
        "greatest_span": "6 ft", "greatest_overhang": "16 in",
    });
    with(railed, &changes)
}

/// Three-course work asked for and allowed, and one thing more.
fn three_course(pointer: &str, value: Value) -> Value {
    let mut changes = json!({ "/assemblies/post-7/deck_flashing/dried_in": "three_course", "/practice/three_course_allowed": true });
    changes[pointer] = value;
    changes
}

/// Two lags of 5/16 × 3 in with something changed.
fn lags(change: Value) -> Value {
    let mut lags = json!({ "count": 2, "diameter": "5/16 in", "length": "3 in", "spacing": "2 in" });
    lags.as_object_mut().unwrap().extend(change.as_object().unwrap().clone());
    json!({ format!("{POST}/lags"): lags })
}

/// A second slope, 160 m long, with two rows of so many posts 6 mm apart.
fn second_slope(columns: u32) -> Value {
    let mut second = good()["slopes"][0].clone();
    second["name"] = json!("north");
    second["outline"] = json!([["0", "0"], ["160 m", "0"], ["160 m", "5 m"], ["0", "5 m"]]);
    second["posts"] = json!([]);
    second["post_grids"] = json!([{
        "name": "G", "assembly": "post-7", "u": "1 m", "v": "1 m",
        "columns": columns, "column_spacing": "6 mm", "rows": 2, "row_spacing": "1 m",
    }]);
    json!({ "/slopes/-": second })
}

fn errors() -> Vec<Case> {
    let mut two_rows_without_a_gap = array("field", "3 ft", 3);
    two_rows_without_a_gap["rows"] = json!(2);
    let at = |root: &str, field: &str, value: Value| json!({ format!("{root}/{field}"): value });
    let slope = |field: &str, value: Value| at("/slopes/0", field, value);
    let hole = |name: &str, u: [&str; 2], v: [&str; 2]| json!({ "name": name, "outline": [[u[0], v[0]], [u[1], v[0]], [u[1], v[1]], [u[0], v[1]]] });
    let record = |weight: Value, cut: Value| {
        let other = json!({ "handled": 99, "broken": 1 });
        json!({ "/practice/crew_record": {
            "weight": weight, "cut": cut, "removed": other, "loosened": other, "walked": other,
        } })
    };
    let in_rails = |code, path: &str, changes: Value| {
        let path = Box::leak(format!("/slopes/0/arrays/0{path}").into_boxed_str());
        case(code, path, slope("arrays", json!([railed("field", "3 ft", changes)])))
    };
    let crooked = |lines: Value| slope("rafters", json!({ "width": "1 1/2 in", "lines": lines }));
    let grid = json!({
        "name": "G", "assembly": "post-7", "u": "5 ft", "v": "9 ft",
        "columns": 40_000, "column_spacing": "1 in", "rows": 25_000, "row_spacing": "1 in",
    });
    vec![
        case("unknown-format", "/format", json!({ "/format": "tilepost-job/2" })),
        case("unknown-field", "/slopes/0/pich", slope("pich", json!("5:12"))),
        case("missing-field", "/slopes/0", slope("tile", json!(null))),
        case("missing-field", "/slopes/0", slope("pitch", json!(null))),
        case("missing-field", TILE, at(TILE, "lap_side", json!(null))),
        case("missing-field", "/slopes/0/courses", slope("courses", json!({ "exposure": "13 in" }))),
        case("wrong-type", "/slopes/0/posts", slope("posts", json!(7))),
        case("wrong-type", "/slopes/0/outline/2", slope("outline/2", json!(["38 ft"]))),
        case("wrong-type", "/tiles/flat-13/length", at(TILE, "length", json!(16.5))),
        case("unit-missing", "/tiles/flat-13/length", at(TILE, "length", json!("16.5"))),
        case("out-of-limits", "/slopes/0/pitch", slope("pitch", json!("81 deg"))),
        case("unknown-choice", "/tiles/flat-13/held", at(TILE, "held", json!("nialed"))),
        case("unknown-choice", "/slopes/0/columns/bond", slope("columns/bond", json!("halb"))),
        case("bad-fraction", "/slopes/0/columns/bond", slope("columns/bond", json!([]))),
        case("wrong-type", "/slopes/0/columns/bond/2", slope("columns/bond", json!(["0", "1/2", ["1/3"]]))),
        case("too-many", "/slopes/0/columns/bond", slope("columns/bond", json!(vec!["0"; 10_001]))),
        case("out-of-range", "/tiles/flat-13/thickness", at(TILE, "thickness", json!("0 in"))),
        case("out-of-range", "/slopes/0/walked", slope("walked", json!(-1))),
        case("out-of-range", "/practice/least_web", json!({ "/practice/least_web": "0 in" })),
        case("out-of-range", "/practice/breakage/cut", json!({ "/practice/breakage/cut": 1 })),
        case("out-of-range", "/practice/cartridge", json!({ "/practice/cartridge": "0 mL" })),
        case(
            "out-of-range",
            "/tiles/flat-13/profile/rise",
            at(TILE, "profile", json!({ "shape": "arcs", "rise": "4 in", "wave": "6 in" })),
        ),
        case("service-level", "/practice/service_level", json!({ "/practice/service_level": 1 })),
        case(
            "out-of-range",
            "/practice/crew_record/weight",
            record(json!(-1), json!({ "handled": 9, "broken": 1 })),
        ),
        case("missing-field", "/practice/crew_record", json!({ "/practice/crew_record": {} })),
        case(
            "record-says-nothing",
            "/practice/crew_record/weight",
            json!({ "/practice/crew_record": {
                "weight": 0, "cut": { "handled": 9, "broken": 1 }, "removed": { "handled": 9, "broken": 1 },
                "loosened": { "handled": 9, "broken": 1 },
            } }),
        ),
        case(
            "broken-beyond-handled",
            "/practice/crew_record/cut",
            record(json!(50), json!({ "handled": 9, "broken": 10 })),
        ),
        case(
            "record-says-nothing",
            "/practice/crew_record/cut",
            record(json!(0), json!({ "handled": 9, "broken": 0 })),
        ),
        case("out-of-range", "/practice/cost_of_short", json!({ "/practice/cost_of_short": "1.234,50" })),
        case("wrong-type", "/practice/cost_of_short", json!({ "/practice/cost_of_short": 45.5 })),
        case("out-of-range", "/tiles/flat-13/harvest", at(TILE, "harvest", json!(-1))),
        case("empty-name", "/slopes/0/name", slope("name", json!(" "))),
        case("unseen-character", "/name", json!({ "/name": "Alder\u{200b} Court 7" })),
        case("unseen-character", "/slopes/0/name", slope("name", json!("south\n"))),
        case("unseen-character", "/slopes/0/posts/0/name", slope("posts/0/name", json!("A1\u{ad}"))),
        case("unseen-character", "/slopes/0/posts/0/name", slope("posts/0/name", json!("A\u{a0}1"))),
        case("unseen-character", "/slopes/0/posts/0/name", slope("posts/0/name", json!("A1 "))),
        case(
            "unseen-character",
            "/slopes/0/posts/0/assembly",
            slope("posts/0/assembly", json!("post-7\u{200d}")),
        ),
        case(
            "unseen-character",
            "/tiles/flat\u{202e}-13",
            at("/tiles", "flat\u{202e}-13", good()["tiles"]["flat-13"].clone()),
        ),
        case(
            "unseen-character",
            "/assemblies/post-7/items/0/item",
            at(POST, "items", json!([{ "item": "storm\tcollar", "count": 1 }])),
        ),
        case(
            "unseen-character",
            "/practice/waste/staple\u{feff}",
            json!({ "/practice/waste": { "staple\u{feff}": 0.05 } }),
        ),
        case_with(
            "unseen-character",
            "/slopes/0/posts/csv",
            slope("posts", json!({ "csv": "posts.csv" })),
            &[("posts.csv", "name,assembly,u,v\nA\u{2066}1,post-7,5 ft,5 ft\n")],
        ),
        priced("unseen-character", "item,unit,pack,price,currency\nst\u{ad}aple,each,1000,4.85,USD\n"),
        priced(
            "unseen-character",
            "item,unit,pack,price,currency,vendor_part\nstaple,each,1000,4.85,USD,T\u{200b}50\n",
        ),
        case(
            "item-is-worked-out",
            "/assemblies/post-7/items/0/item",
            at(POST, "items", json!([{ "item": "felt-30, rolls", "count": 1 }])),
        ),
        case(
            "item-is-worked-out",
            "/assemblies/post-7/blocking_items/0/item",
            at(POST, "blocking_items", json!([{ "item": "Blocking  board", "count": 1 }])),
        ),
        case("one-way", "/slopes/0/courses", slope("courses", json!({}))),
        case("one-way", "/slopes/0/courses", slope("courses/noses", json!(["0", "13 in"]))),
        case("one-way", "/slopes/0/rafters", slope("rafters", json!({ "width": "38 mm" }))),
        case("unknown-reference", "/slopes/0/tile", slope("tile", json!("flat-31"))),
        case("unknown-reference", "/slopes/0/underlayment/kind", slope("underlayment/kind", json!("felt"))),
        case("unknown-reference", "/slopes/0/posts/3/assembly", slope("posts/3/assembly", json!("post-8"))),
        case("too-many", "/slopes/0/post_grids", slope("post_grids", json!([grid]))),
        // 50 000 with the 14 that stand on the other slope are too many, and 49 986 are not.
        case("too-many", "/slopes/1/post_grids", second_slope(25_000)),
        case("too-many", "/slopes/0/courses/exposure", slope("courses/exposure", json!("0.5 mm"))),
        case("too-many", "/slopes/0/rafters/spacing", slope("rafters/spacing", json!("1 mm"))),
        case("too-many", "/slopes/0/underlayment", json!({ "/underlayments/felt-30/head_lap": "35.999 in" })),
        case("no-slopes", "/slopes", json!({ "/slopes": [] })),
        case("cover-wider-than-tile", "/tiles/flat-13/cover", at(TILE, "cover", json!("14 in"))),
        case("side-lap-too-wide", "/tiles/flat-13/cover", at(TILE, "cover", json!("6 1/2 in"))),
        case(
            "head-lap-too-long",
            "/tiles/flat-13/least_head_lap",
            at(TILE, "least_head_lap", json!("16 1/2 in")),
        ),
        case(
            "pan-and-cover",
            "/tiles/flat-13/pan_and_cover/cover_width",
            json!({
                "/tiles/flat-13/width": null, "/tiles/flat-13/lap_side": null,
                "/tiles/flat-13/pan_and_cover": { "pan_width": "6 in", "cover_width": "6 in" },
            }),
        ),
        case(
            "pan-and-cover",
            "/tiles/flat-13/pan_and_cover/pan_width",
            json!({
                "/tiles/flat-13/width": null, "/tiles/flat-13/lap_side": null,
                "/tiles/flat-13/pan_and_cover": { "pan_width": "12 1/4 in", "cover_width": "6 in" },
            }),
        ),
        case(
            "sheet-lap-too-wide",
            "/underlayments/felt-30/head_lap",
            json!({ "/underlayments/felt-30/head_lap": "36 in" }),
        ),
        case(
            "no-hole-saw",
            "/assemblies/post-7/hole_saws",
            at(POST, "hole_saws", json!(["1 1/2 in", "1 7/8 in"])),
        ),
        case(
            "flashing-too-small",
            "/assemblies/post-7/deck_flashing/cone_diameter",
            at(POST, "deck_flashing/cone_diameter", json!("1 1/4 in")),
        ),
        case(
            "flashing-too-small",
            "/assemblies/post-7/deck_flashing/down",
            at(POST, "deck_flashing/down", json!("7/8 in")),
        ),
        case(
            "flashing-too-small",
            "/assemblies/post-7/deck_flashing",
            json!({ "/practice/bead_inset": "5 1/16 in" }),
        ),
        case(
            "flashing-too-small",
            "/assemblies/post-7/deck_flashing/width",
            three_course("/practice/mesh_width", json!("10 1/64 in")),
        ),
        case(
            "flashing-too-small",
            "/assemblies/post-7/deck_flashing/up",
            json!({
                "/assemblies/post-7/deck_flashing/dried_in": "three_course", "/practice/three_course_allowed": true,
                "/assemblies/post-7/deck_flashing/down": "2 in", "/assemblies/post-7/deck_flashing/up": "1 in",
                "/practice/mesh_width": "6 1/64 in",
            }),
        ),
        // Two assemblies: the mast's flashing reaches 8 in up, 5 in down.
        case(
            "no-tuck-window",
            "/practice/deck_tuck",
            json!({ "/practice/deck_tuck": "7 1/64 in", "/practice/patch_underlap": "8 in" }),
        ),
        case("no-tuck-window", "/practice/drain", json!({ "/practice/drain": "9 1/64 in" })),
        case(
            "no-tuck-window",
            "/assemblies/post-7/deck_flashing/up",
            at(POST, "deck_flashing/up", json!("1 63/64 in")),
        ),
        case(
            "patch-too-short",
            "/practice/patch_underlap",
            json!({ "/practice/patch_underlap": "1 63/64 in" }),
        ),
        case("patch-too-short", "/practice/deck_tuck", json!({ "/practice/deck_tuck": "4 1/64 in" })),
        case(
            "three-course-not-allowed",
            "/assemblies/post-7/deck_flashing/dried_in",
            at(POST, "deck_flashing/dried_in", json!("three_course")),
        ),
        case(
            "three-course-not-allowed",
            "/assemblies/post-7/deck_flashing/dried_in",
            three_course("/practice/three_course_allowed", json!(false)),
        ),
        case("mesh-too-narrow", "/practice/mesh_width", json!({ "/practice/mesh_width": "2 63/64 in" })),
        case(
            "mesh-too-narrow",
            "/practice/edge_extension",
            json!({ "/practice/edge_extension": "2 1/64 in" }),
        ),
        case("out-of-range", "/practice/cement_coats", three_course("/practice/cement_coats", json!(0))),
        case(
            "wrong-type",
            "/practice/three_course_allowed",
            three_course("/practice/three_course_allowed", json!("yes")),
        ),
        case(
            "unknown-choice",
            "/assemblies/post-7/deck_flashing/dried_in",
            at(POST, "deck_flashing/dried_in", json!("three-course")),
        ),
        case("opening-too-large", "/slopes/0", at(POST, "clearance", json!("97 cm"))),
        case("two-slopes-of-one-name", "/slopes/1/name", json!({ "/slopes/-": good()["slopes"][0] })),
        case("two-posts-of-one-name", "/slopes/0/posts/1", slope("posts/1/name", json!("A1"))),
        case(
            "too-few-corners",
            "/slopes/0/outline",
            json!({ "/slopes/0/outline": [["0", "0"], ["38 ft", "0"]], "/slopes/0/edges": null }),
        ),
        case(
            "no-area",
            "/slopes/0/outline",
            slope("outline", json!([["0", "0"], ["1 ft", "0"], ["3 ft", "0"], ["2 ft", "0"]])),
        ),
        case(
            "crossing-outline",
            "/slopes/0/outline",
            slope("outline", json!([["0", "0"], ["38 ft", "0"], ["0", "17 ft"], ["38 ft", "17 ft"]])),
        ),
        case(
            "hole-outside",
            "/slopes/0/holes/0",
            slope("holes", json!([hole("vent", ["-1 ft", "1 ft"], ["1 ft", "2 ft"])])),
        ),
        case(
            "hole-outside",
            "/slopes/0/holes/0",
            slope("holes", json!([hole("chimney", ["10 ft", "12 ft"], ["15 ft", "17 ft"])])),
        ),
        case(
            "holes-overlap",
            "/slopes/0/holes/1",
            slope(
                "holes",
                json!([
                    hole("vent", ["1 ft", "3 ft"], ["10 ft", "12 ft"]),
                    hole("stack", ["2 ft", "4 ft"], ["11 ft", "13 ft"]),
                ]),
            ),
        ),
        case("edge-count", "/slopes/0/edges", slope("edges", json!(["eave", "rake", "ridge"]))),
        case(
            "not-ascending",
            "/slopes/0/courses/noses/2",
            slope("courses", json!({ "noses": ["-1 in", "12 in", "12 in"] })),
        ),
        case(
            "no-eave",
            "/slopes/0/courses",
            json!({
                "/slopes/0/edges": null, "/slopes/0/perimeter": null, "/slopes/0/setbacks": null,
                "/slopes/0/courses": { "overhang": "2 in", "ridge_gap": "3 in" },
            }),
        ),
        case(
            "no-room-for-courses",
            "/slopes/0/courses",
            slope("courses", json!({ "overhang": "2 in", "ridge_gap": "16 ft" })),
        ),
        case("bad-fraction", "/slopes/0/columns/bond/1", slope("columns/bond", json!(["0", "3/3"]))),
        case(
            "no-plane",
            "/slopes/0/place/points",
            slope(
                "place",
                json!({ "points": [["0", "0", "0"], ["1 m", "1 m", "1 m"], ["2 m", "2 m", "2 m"]] }),
            ),
        ),
        case("no-rafters", "/slopes/0/rafters/spacing", slope("rafters/first", json!("39 ft"))),
        case("rafters-overlap", "/slopes/0/rafters/spacing", slope("rafters/spacing", json!("1 1/4 in"))),
        case(
            "overhang-too-far",
            "/slopes/0/overhang",
            json!({
                "/slopes/0/outline": [["18 ft", "0"], ["20 ft", "0"], ["38 ft", "17 ft"], ["0", "17 ft"]],
                "/slopes/0/overhang": "2 ft", "/slopes/0/posts": [],
            }),
        ),
        case("post-off-slope", "/slopes/0/posts/0", slope("posts/0/u", json!("-1 in"))),
        case("post-off-slope", "/slopes/0/posts/0", slope("posts/0/u", json!("0"))),
        case(
            "post-off-slope",
            "/slopes/0/posts/0",
            slope("holes", json!([hole("vent", ["4 ft", "6 ft"], ["3 ft", "4 ft"])])),
        ),
        case(
            "lag-thread",
            "/assemblies/post-7/lags",
            lags(json!({ "length": "2 in", "thread_length": "3 in" })),
        ),
        case(
            "lag-thread",
            "/assemblies/post-7/lags",
            lags(json!({ "thread_length": "1 in", "tip": "2 in" })),
        ),
        case("missing-field", "/assemblies/post-7/lags", lags(json!({ "diameter": "8 mm" }))),
        case("out-of-range", "/assemblies/post-7/lags/count", lags(json!({ "count": 0 }))),
        case("one-way", "/screening/wind", json!({ "/screening": { "wind": {} } })),
        case(
            "out-of-range",
            "/screening/wind/equation/gcp",
            json!({ "/screening": { "wind": { "equation": { "speed": "110 mph", "kz": 0.7, "gcp": 1.8 } } } }),
        ),
        case(
            "out-of-range",
            "/screening/c_d",
            json!({ "/screening": { "c_d": 0, "wind": { "pressure": "30 psf" } } }),
        ),
        case(
            "unit-missing",
            "/screening/wind/pressure",
            json!({ "/screening": { "wind": { "pressure": "30" } } }),
        ),
        case(
            "out-of-range",
            "/slopes/0/rafters/specific_gravity",
            slope("rafters/specific_gravity", json!(50)),
        ),
        case(
            "two-arrays-of-one-name",
            "/slopes/0/arrays/1",
            slope("arrays", json!([array("field", "3 ft", 3), array("field", "20 ft", 3)])),
        ),
        case(
            "arrays-overlap",
            "/slopes/0/arrays/1",
            slope("arrays", json!([array("left", "3 ft", 3), array("right", "13 ft 1 in", 3)])),
        ),
        case("missing-field", "/slopes/0/arrays/0", slope("arrays", json!([two_rows_without_a_gap]))),
        case("out-of-range", "/slopes/0/arrays/0/columns", slope("arrays", json!([array("field", "0", 0)]))),
        case("out-of-range", "/slopes/0/arrays/0", slope("arrays", json!([array("field", "0", 1_000_000)]))),
        case(
            "shift-too-far",
            "/slopes/0/arrays/0",
            slope("arrays", json!([railed("field", "5 in", json!({}))])),
        ),
        case(
            "shift-too-far",
            "/slopes/0/arrays/1",
            slope(
                "arrays",
                json!([railed("left", "3 ft", json!({})), railed("right", "14 ft 1 in", json!({}))]),
            ),
        ),
        case(
            "shift-too-far",
            "/slopes/0/arrays/0",
            json!({
                "/slopes/0/holes": [hole("vent", ["4 ft", "5 ft"], ["93 in", "100 in"])],
                "/slopes/0/arrays": [railed("field", "3 ft", json!({}))],
            }),
        ),
        in_rails("missing-field", "", json!({ "/rails": null })),
        in_rails("unknown-reference", "/rails/assembly", json!({ "/rails/assembly": "post-8" })),
        in_rails("out-of-range", "/shift/left", json!({ "/shift/left": "-1 in" })),
        in_rails("out-of-range", "/rails/greatest_span", json!({ "/rails/greatest_span": "0" })),
        in_rails("out-of-range", "/rails/greatest_overhang", json!({ "/rails/greatest_overhang": "-1 in" })),
        in_rails("out-of-range", "/rails/stagger", json!({ "/rails/stagger": 9 })),
        in_rails("out-of-range", "/rails/stagger", json!({ "/rails/stagger": 0 })),
        in_rails("wrong-type", "/rails/blocking", json!({ "/rails/blocking": "no" })),
        in_rails("wrong-type", "/rails/clamps/0", json!({ "/rails/clamps": [["8 in"]] })),
        in_rails("clamp-window", "/rails/clamps", json!({ "/rails/clamps": [] })),
        in_rails("too-many", "/rails/clamps", json!({ "/rails/clamps": vec![["1 in", "2 in"]; 9] })),
        in_rails("too-many", "/rails/zones", {
            let zone = json!({ "from": ["0", "0"], "to": ["38 ft", "5 ft"], "greatest_span": "4 ft" });
            json!({ "/rails/zones": vec![zone; 101] })
        }),
        case("too-many", "/slopes/0/arrays", {
            let rails = json!({
                "/rows": 501, "/module_height": "8 mm", "/row_gap": "0", "/rails/least_distance": "0",
                "/rails/clamps": [["1 mm", "2 mm"], ["5 mm", "6 mm"]],
            });
            slope("arrays", json!([railed("field", "3 ft", rails)]))
        }),
        in_rails("out-of-range", "/name", json!({ "/name": "é".repeat(151) })),
        in_rails("clamp-window", "/rails/clamps/0", json!({ "/rails/clamps/0": ["16 in", "8 in"] })),
        in_rails("clamp-window", "/rails/clamps/1", json!({ "/rails/clamps/1": ["58 in", "66 1/64 in"] })),
        in_rails("rails-too-near", "/rails/clamps", json!({ "/rails/clamps/1": ["16 in", "58 in"] })),
        in_rails("rails-too-near", "/rails/clamps", json!({ "/rails/clamps/1": ["21 63/64 in", "58 in"] })),
        in_rails(
            "rails-too-near",
            "/rails/clamps",
            json!({ "/rails/clamps": [["0", "61 in"]], "/rows": 2, "/row_gap": "63/64 in" }),
        ),
        in_rails(
            "zone-upside-down",
            "/rails/zones/0",
            json!({ "/rails/zones": [{ "from": ["0", "5 ft"], "to": ["38 ft", "0"], "greatest_span": "4 ft" }] }),
        ),
        case(
            "rails-without-rafters",
            "/slopes/0/arrays/0/rails",
            json!({ "/slopes/0/rafters": null, "/slopes/0/arrays": [railed("field", "3 ft", json!({}))] }),
        ),
        case("opening-too-large", "/slopes/0", {
            let on_masts = railed("field", "3 ft", json!({ "/rails/assembly": "mast" }));
            json!({ "/assemblies/mast/clearance": "97 cm", "/slopes/0/posts": null, "/slopes/0/arrays": [on_masts] })
        }),
        case(
            "not-ascending",
            "/slopes/0/rafters/lines/1",
            crooked(json!([{ "lower": "1 ft", "upper": "2 ft" }, { "lower": "4 ft", "upper": "2 ft" }])),
        ),
        case(
            "rafters-overlap",
            "/slopes/0/rafters/lines",
            crooked(
                json!([{ "lower": "1 ft", "upper": "1 ft" }, { "lower": "3 ft", "upper": "13 31/64 in" }]),
            ),
        ),
        case("no-rafters", "/slopes/0/rafters/lines", crooked(json!([]))),
        case("one-way", "/slopes/0/rafters", slope("rafters/lines", json!([]))),
        case("wrong-type", "/slopes/0/posts/0/fixed", slope("posts/0/fixed", json!(1))),
        case_with(
            "wrong-type",
            "/slopes/0/posts/csv",
            slope("posts", json!({ "csv": "posts.csv" })),
            &[("posts.csv", "name,assembly,u,v,fixed\nA1,post-7,5 ft,5 ft,yes\n")],
        ),
        case("out-of-range", "/practice/cost_of_failing", json!({ "/practice/cost_of_failing": "-1" })),
        case("missing-file", "/slopes/0/posts/csv", slope("posts", json!({ "csv": "posts.csv" }))),
        case("bad-file-name", "/slopes/0/posts/csv", slope("posts", json!({ "csv": "../posts.csv" }))),
        case("bad-file-name", "/slopes/0/posts/csv", slope("posts", json!({ "csv": "/etc/posts.csv" }))),
        case_with(
            "bad-csv",
            "/slopes/0/posts/csv",
            slope("posts", json!({ "csv": "posts.csv" })),
            &[("posts.csv", "name,assembly,u\nA1,post-7,5 ft\n")],
        ),
        case_with(
            "ambiguous-csv",
            "/slopes/0/posts/csv",
            slope("posts", json!({ "csv": "posts.csv" })),
            &[("posts.csv", "name;assembly;u_mm;v_mm\nA1;post-7;1,500;1,200\n")],
        ),
        priced("bad-csv", "item,unit,pack,currency\nstaple,each,1000,USD\n"),
        priced("bad-csv", "item,unit,pack,price,currency\n"),
        priced("bad-csv", "item,unit,pack,price,currency\nstaple,each,1000,4.85 USD,USD\n"),
        priced("ambiguous-csv", "item;unit;pack;price;currency\nstaple;each;1000;1.234,50;USD\n"),
        priced("ambiguous-csv", "item,unit,pack,price,currency\nstaple,each,1000,\"1.234,50\",USD\n"),
        priced("out-of-range", "item,unit,pack,price,currency\nstaple,each,1000,-4.85,USD\n"),
        priced("out-of-range", "item,unit,pack,price,currency\nstaple,each,0,4.85,USD\n"),
        priced("out-of-range", "item,unit,pack,price,currency\nstaple,each,2.5,4.85,USD\n"),
        priced("out-of-range", "item,unit,pack,price,currency,minimum_order\nstaple,each,1000,4.85,USD,0\n"),
        priced("unit-unknown", "item,unit,pack,price,currency\nstaple,box,1000,4.85,USD\n"),
        priced("empty-name", "item,unit,pack,price,currency\n ,each,1000,4.85,USD\n"),
        priced("formula-cell", "item,unit,pack,price,currency\n=1+2,each,1000,4.85,USD\n"),
        priced(
            "formula-cell",
            "item,unit,pack,price,currency,vendor_part\nstaple,each,1000,4.85,USD,@SUM(A1)\n",
        ),
        priced("formula-cell", "item,unit,pack,price,currency\nstaple,each,1000,=4.85,USD\n"),
        priced("currency", "item,unit,pack,price,currency\nstaple,each,1000,4.85,dollar\n"),
        priced(
            "two-currencies",
            "item,unit,pack,price,currency\nstaple,each,1000,4.85,USD\nstaple,each,5000,19.90,CAD\n",
        ),
        priced(
            "unit-of-item",
            "item,unit,pack,price,currency\nsealant,fl oz,10.1,7.45,USD\nsealant,each,1,7.45,USD\n",
        ),
        priced(
            "duplicate-row",
            "item,unit,pack,price,currency\nbatten,ft,1,0.95,USD\nbatten,in,12,0.96,USD\n",
        ),
        case("missing-file", "/prices", json!({ "/prices": "prices.csv" })),
        case("bad-file-name", "/prices", json!({ "/prices": "../prices.csv" })),
        case("wrong-type", "/prices", json!({ "/prices": { "csv": "prices.csv" } })),
        case("missing-field", "/bid", json!({ "/bid": {} })),
        case("currency", "/bid/currency", json!({ "/bid": { "currency": "usd" } })),
        case("out-of-range", "/bid/markup", json!({ "/bid": { "currency": "USD", "markup": -0.1 } })),
        case("out-of-range", "/bid/tax", json!({ "/bid": { "currency": "USD", "tax": 11 } })),
        case("out-of-range", "/bid/labour/rate_per_hour", labour("-68.50", json!({ "lift": 2 }))),
        case("out-of-range", "/bid/labour/rate_per_hour", labour("1,234.50", json!({ "lift": 2 }))),
        case("out-of-range", "/bid/labour/minutes/lift", labour("68.50", json!({ "lift": -2 }))),
        case("unknown-field", "/bid/labour/minutes/lfit", labour("68.50", json!({ "lfit": 2 }))),
        case("out-of-range", "/practice/waste/staple", json!({ "/practice/waste": { "staple": -0.05 } })),
        case("out-of-range", "/practice/blade_life", json!({ "/practice/blade_life": "0 ft" })),
        case("one-way", "/practice/waste/sealant", json!({ "/practice/waste": { "sealant": 0.2 } })),
        case_with(
            "two-currencies",
            "/bid/currency",
            json!({ "/prices": "prices.csv", "/bid": { "currency": "CAD" } }),
            &[("prices.csv", "item,unit,pack,price,currency\nstaple,each,1000,4.85,USD\n")],
        ),
    ]
}

fn findings() -> Vec<Case> {
    let slope = |field: &str, value: Value| json!({ format!("/slopes/0/{field}"): value });
    vec![
        case_with(
            "csv-read-as",
            "/slopes/0/posts/csv",
            slope("posts", json!({ "csv": "posts.csv" })),
            &[("posts.csv", "name;assembly;u_mm;v_mm\nA1;post-7;1500,5;1200\n")],
        ),
        case(
            "exposure-beyond-greatest",
            "/slopes/0/courses/exposure",
            slope("courses/exposure", json!("13 5/8 in")),
        ),
        case("low-slope", "/slopes/0/pitch", slope("pitch", json!("2.49:12"))),
        case("single-underlayment", "/slopes/0/pitch", slope("pitch", json!("2.5:12"))),
        case(
            "pitch-disagrees",
            "/slopes/0/pitch",
            slope("place", json!({ "points": [["0", "0", "0"], ["4 m", "0", "0"], ["0", "2 m", "1 m"]] })),
        ),
        case("inside-setback", "/slopes/0/posts/0", slope("posts/0/v", json!("15 ft 6 1/64 in"))),
        case("no-such-edge", "/slopes/0/setbacks/hip", slope("setbacks/hip", json!("18 in"))),
        case("no-such-edge", "/slopes/0/setbacks/hole", slope("setbacks/hole", json!("12 in"))),
        case("inside-setback", "/slopes/0/posts/0", {
            let vent = json!([["60 in", "3 ft"], ["62 in", "3 ft"], ["62 in", "38 in"], ["60 in", "38 in"]]);
            json!({ "/slopes/0/holes": [{ "outline": vent }], "/slopes/0/setbacks/hole": "4 1/64 in" })
        }),
        case("no-such-edge", "/slopes/0/perimeter/edges/0", slope("perimeter/edges/0", json!("valley"))),
        case("array-off-slope", "/slopes/0/arrays/0", slope("arrays", json!([array("field", "30 ft", 3)]))),
        case("array-off-slope", "/slopes/0/arrays/0", slope("arrays", json!([array("field", "40 ft", 3)]))),
    ]
}

/// Lower case, no full stop, and something to do about it.
fn check_style(problem: &Problem) {
    let Problem { message, help, .. } = problem;
    assert!(!message.is_empty() && !help.is_empty(), "{problem:?}");
    for text in [message, help] {
        assert!(!text.ends_with('.'), "a full stop: {text}");
        assert_eq!(text.matches('`').count() % 2, 0, "an odd backtick: {text}");
        let names = ["NaN", "TOML", "JSON", "UTF-8"];
        let first = text.chars().next().unwrap();
        assert!(
            !first.is_uppercase() || names.iter().any(|name| text.starts_with(name)),
            "a capital: {text}"
        );
    }
}

#[test]
fn each_error_is_found_alone_and_in_its_place() {
    for case in errors() {
        let problems = read_with(&with(good(), &case.changes), case.files).unwrap_err();
        assert_eq!(codes(&problems), [(case.code, case.path)], "{}\n{problems:#?}", case.changes);
        problems.iter().for_each(check_style);
    }
}

#[test]
fn each_finding_leaves_the_job_good() {
    for case in findings() {
        let job = read_with(&with(good(), &case.changes), case.files)
            .unwrap_or_else(|problems| panic!("{}: {problems:#?}", case.code));
        assert_eq!(
            codes(job.findings()),
            [(case.code, case.path)],
            "{}\n{:#?}",
            case.changes,
            job.findings()
        );
        assert!(job.findings().iter().all(|finding| finding.severity == Severity::Finding));
        job.findings().iter().for_each(check_style);
    }
}

/// Codes of findings and refusals behind the reading of a job; `tests/tests/codes.rs` sees to their cases.
const BEHIND: [&str; 29] = [
    "posts-at-one-point",
    "breakage-too-wide",
    "breakage-without-mean",
    "flashing-trimmed",
    "harvest-beyond-arrays",
    "head-lap-below-tuck",
    "lag-spacing-unknown",
    "lag-too-near",
    "no-costs",
    "no-jobs",
    "no-layout",
    "no-least-cost",
    "no-rails",
    "no-tile",
    "not-screened",
    "patch-longer-than-roll",
    "pilot-hole",
    "post-too-tight",
    "prices-differ",
    "severed",
    "side-cover-short",
    "thin-margin",
    "tiles-differ",
    "too-much-money",
    "tuck-short",
    "two-jobs-of-one-name",
    "underlayments-differ",
    "uplift-above-resistance",
    "waste-not-used",
];

#[test]
fn every_code_has_a_case() {
    let here: Vec<Case> = errors().into_iter().chain(findings()).collect();
    let cased: BTreeSet<&str> = here.iter().map(|case| case.code).chain(super::reading::CASED).collect();
    // The rest of the table: each list has a test of its own, and the last one is that of findings and refusals
    // behind the reading of a job.
    let elsewhere = deck::CODES.iter().chain(layout::check::CODES).map(|code| code.as_str());
    let elsewhere: BTreeSet<&str> = elsewhere.chain(units::CODES.iter().copied()).chain(BEHIND).collect();
    assert!(BEHIND.iter().all(|code| !cased.contains(code)), "a case for what is listed without one");
    let without: Vec<&Code> = Code::ALL
        .iter()
        .filter(|code| !cased.contains(code.as_str()) && !elsewhere.contains(code.as_str()))
        .collect();
    assert!(without.is_empty(), "no case for {without:?}");
}

#[test]
fn what_sits_exactly_on_a_limit_is_good() {
    let changes = [
        json!({ "/tiles/flat-13/cover": "13 in" }),
        json!({ "/slopes/0/pitch": "80 deg" }),
        json!({ "/slopes/0/pitch": "4:12" }),
        json!({ "/slopes/0/posts/0/v": "15 ft 6 in" }),
        json!({ "/slopes/0/courses/exposure": "13 1/2 in" }),
        json!({ "/assemblies/post-7/hole_saws": ["2 in"] }),
        json!({ "/assemblies/post-7/deck_flashing/cone_diameter": "1 1/2 in" }),
        json!({ "/slopes/0/pitch": "3:12", "/underlayments/felt-30/head_lap": "19 in" }),
        json!({ "/practice/breakage/cut": 0, "/practice/service_level": 0.999 }),
        json!({ "/slopes/0/arrays": [array("left", "0", 3), array("right", "10 ft 2 in", 3)] }),
        json!({ "/slopes/0/arrays": [railed("left", "6 in", json!({})), railed("right", "11 ft 8 in", json!({}))] }),
        json!({ "/slopes/0/arrays": [railed("field", "3 ft", json!({
            "/rails/clamps": [["0", "22 in"], ["28 in", "60 in"]], "/rows": 2, "/row_gap": "0",
        }))] }),
        json!({ "/practice/deck_tuck": "7 in", "/practice/patch_underlap": "7 in", "/practice/drain": "4 in" }),
        json!({ "/practice/drain": "9 in" }),
        second_slope(24_993),
        json!({ "/practice/three_course_allowed": true }),
        three_course("/practice/edge_extension", json!("2 in")),
        three_course("/practice/mesh_width", json!("10 in")),
    ];
    for change in changes {
        let job = read_with(&with(good(), &change), &[])
            .unwrap_or_else(|problems| panic!("{change}: {problems:#?}"));
        assert_eq!(codes(job.findings()), [], "{change}");
    }
}

#[test]
fn all_problems_come_at_once_in_the_order_of_the_text() {
    let job = with(
        good(),
        &json!({
            "/tiles/flat-13/cover": "14 in",
            "/tiles/flat-13/wieght": "9 lb",
            "/assemblies/post-7/clearance": "1/4",
            "/slopes/0/columns/bond": "thirds",
            "/slopes/0/posts/2/u": "50 ft",
            "/slopes/0/posts/4/assembly": "post-9",
            "/practice/service_level": 1,
        }),
    );
    // The text is written with its keys in order.
    assert_eq!(
        codes(&read_with(&job, &[]).unwrap_err()),
        [
            ("unit-missing", "/assemblies/post-7/clearance"),
            ("service-level", "/practice/service_level"),
            ("unknown-choice", "/slopes/0/columns/bond"),
            ("post-off-slope", "/slopes/0/posts/2"),
            ("unknown-reference", "/slopes/0/posts/4/assembly"),
            ("cover-wider-than-tile", "/tiles/flat-13/cover"),
            ("unknown-field", "/tiles/flat-13/wieght"),
        ]
    );
}
