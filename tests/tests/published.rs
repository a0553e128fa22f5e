//! Whole jobs against what is published: rules of codes and guides, and worked examples of handbooks.
//!
//! What concerns one module alone (slope factors, beads, quantiles, segments of a circle) is checked beside it.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use serde_json::{Value, json};
use takeoff_core::roof::PlaneFit;
use takeoff_core::units::Length;
use tilepost_tests::{codes_of, takeoff_of};

/// One slope with a post in it, in inches, to be changed.
fn job() -> Value {
    json!({
        "format": "tilepost-job/1",
        "name": "published",
        "tiles": { "tile": {
            "length": "16 1/2 in", "width": "13 in", "cover": "12 in", "least_head_lap": "3 in", "thickness": "1 in",
            "lap_side": "left", "held": "nailed",
        } },
        "underlayments": { "felt": { "sheet_width": "36 in", "head_lap": "2 in" } },
        "assemblies": { "post": {
            "post_diameter": "1 1/2 in", "clearance": "1/4 in",
            "deck_flashing": { "width": "10 in", "down": "4 in", "up": "7 in", "cone_diameter": "2 in" },
            "top_flashing": { "width": "16 in", "down": "6 in", "up": "11 in" },
        } },
        "slopes": [{
            "name": "slope", "pitch": "6:12",
            "outline": [["0", "0"], ["30 ft", "0"], ["30 ft", "17 ft"], ["0", "17 ft"]],
            "edges": ["eave", "rake", "ridge", "rake"],
            "tile": "tile",
            "courses": { "first_nose": "0", "exposure": "13 1/4 in" },
            "columns": { "first_joint": "0", "bond": "half" },
            "underlayment": { "kind": "felt", "first_lap_line": "34 in" },
            "posts": [{ "name": "A", "assembly": "post", "u": "15 ft 6 in", "v": "6 ft" }],
        }],
    })
}

fn numbers(list: &Value, field: &str) -> Vec<f64> {
    list.as_array().unwrap().iter().filter_map(|row| row[field].as_f64()).collect()
}

fn near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got} is not {want}");
}

/// Navy training manual 14044 (Builder 3 & 2, volume 2), figure 3-14: 36 in felt laid single with a top lap of
/// 2 in, or double with 19 in, which shows 17 in. Felt laid over roof covered follows: 36/34 and 36/17.
#[test]
fn felt_shows_34_or_17_inches() {
    for (lap, shown, factor) in [("2 in", 34.0, 1.0588), ("19 in", 17.0, 2.1176)] {
        let mut job = job();
        job["underlayments"]["felt"]["head_lap"] = lap.into();
        let takeoff = takeoff_of(&job);
        let lines: Vec<f64> = takeoff["slopes"][0]["lap_lines_mm"]
            .as_array()
            .unwrap()
            .iter()
            .map(|v| v.as_f64().unwrap())
            .collect();
        assert!(lines.len() > 4);
        for pair in lines.windows(2) {
            near((pair[1] - pair[0]) / 25.4, shown, 1e-9);
            near(36.0 * 25.4 / (pair[1] - pair[0]), factor, 5e-5);
        }
    }
}

/// Courses and gauges of public how-to pages and of a trade article: 204 in between battens at 13 in at most are
/// 16 courses of 12.75 in; a 420 mm tile with a head lap of 75 mm (NHBC Standards 7.2.19, the least for single-lap
/// interlocking tile) has a greatest gauge of 345 mm; the rest follows from `n = ceil(L / e)`, gauge `L / n`.
#[test]
fn courses_fit_between_first_and_last() {
    // Tile and head lap, from the first nose to the last, spaces, gauge, all in millimetres or all in inches.
    for (unit, tile, head_lap, span, spaces, gauge, digits) in [
        ("in", "16", "3", 204.0, 16, 12.75, 1e-6),
        ("in", "17", "3", 192.0, 14, 13.714, 5e-4),
        ("in", "16 1/2", "3", 180.0, 14, 12.857, 5e-4),
        ("mm", "420", "75", 5000.0, 15, 333.33, 5e-3),
        ("mm", "420", "75", 4270.0, 13, 328.46, 5e-3),
        ("mm", "400", "75", 4500.0, 14, 321.4, 5e-2),
    ] {
        let per_unit = if unit == "in" { 25.4 } else { 1.0 };
        let length: f64 = if tile == "16 1/2" { 16.5 } else { tile.parse().unwrap() };
        let top = format!("{} {unit}", span + length);
        let mut job = job();
        job["tiles"]["tile"]["length"] = format!("{tile} {unit}").into();
        job["tiles"]["tile"]["least_head_lap"] = format!("{head_lap} {unit}").into();
        let slope = &mut job["slopes"][0];
        slope["outline"] = json!([["0", "0"], ["30 ft", "0"], ["30 ft", top], ["0", top]]);
        slope["courses"] = json!({ "overhang": "0", "ridge_gap": "0" });
        let takeoff = takeoff_of(&job);
        let courses = &takeoff["slopes"][0]["courses"];
        let exposures = numbers(courses, "exposure_mm");
        assert_eq!(exposures.len(), spaces, "{span} {unit}");
        for exposure in exposures {
            near(exposure / per_unit, gauge, digits);
        }
        near(numbers(courses, "nose_mm").last().unwrap() / per_unit, span, 1e-6);
    }
}

/// Tiles per square (100 sq ft) are 14400 / (exposure × cover) in inches: the visible face of a tile is what it
/// covers. Values of the formula: 14 × 12 in 85.71, 13 1/4 × 12 in 90.57, 13 × 12 in 92.31.
#[test]
fn tiles_of_a_square() {
    for (exposure, per_square) in
        [("14 in", 85.71), ("13 1/4 in", 90.57), ("13 in", 92.31), ("13 1/2 in", 88.89)]
    {
        let mut job = job();
        job["slopes"][0]["courses"]["exposure"] = exposure.into();
        let takeoff = takeoff_of(&job);
        let tiles = takeoff["slopes"][0]["tiles"].as_array().unwrap();
        assert!(tiles.len() > 4);
        for tile in tiles {
            let face: Vec<f64> =
                tile["face_mm"].as_array().unwrap().iter().map(|v| v.as_f64().unwrap()).collect();
            near(9_290_304.0 / ((face[2] - face[0]) * (face[3] - face[1])), per_square, 5e-3);
        }
    }
}

/// Plain tile of 265 × 165 mm with the customary head lap of 65 mm (NHBC Standards 7.2.19) is laid to a gauge of
/// 100 mm, about 60 tiles a square metre (common practice).
#[test]
fn plain_tile_is_sixty_a_square_metre() {
    let mut job = job();
    job["tiles"]["tile"] = json!({
        "length": "265 mm", "width": "165 mm", "cover": "165 mm", "least_head_lap": "65 mm", "thickness": "12 mm",
        "laps": "double", "held": "nailed",
    });
    // 40 gauges of 100 mm and a tile's length.
    job["slopes"][0]["outline"] = json!([["0", "0"], ["9 m", "0"], ["9 m", "4.265 m"], ["0", "4.265 m"]]);
    job["slopes"][0]["courses"] = json!({ "overhang": "0", "ridge_gap": "0" });
    let takeoff = takeoff_of(&job);
    let exposures = numbers(&takeoff["slopes"][0]["courses"], "exposure_mm");
    assert_eq!(exposures.len(), 40);
    exposures.iter().for_each(|exposure| near(*exposure, 100.0, 1e-9));
    near(1e6 / (exposures[0] * 165.0), 60.6, 0.05);
}

/// IBC 2018, 1507.3.2: tile on slopes of 2.5:12 and more; two layers of underlayment below 4:12.
#[test]
fn low_slopes_are_found() {
    for (pitch, low, single) in
        [("2.4:12", true, false), ("2.5:12", false, true), ("3.9:12", false, true), ("4:12", false, false)]
    {
        let mut job = job();
        job["slopes"][0]["pitch"] = pitch.into();
        let codes = codes_of(&job);
        assert_eq!(codes.contains(&"low-slope".to_owned()), low, "{pitch}: {codes:?}");
        assert_eq!(codes.contains(&"single-underlayment".to_owned()), single, "{pitch}: {codes:?}");
        job["underlayments"]["felt"]["head_lap"] = "19 in".into();
        assert!(!codes_of(&job).contains(&"single-underlayment".to_owned()), "{pitch}, laid double");
    }
}

/// Five points of a published exercise on least squares, (0, −3, 0) (4, 0, 0) (3, −1, 1) (1, −2, 1) (−1, −4, −3),
/// nearly in a line as seen from above. Total least squares, computed with numpy's singular values: unit normal
/// ±(0.57869, −0.81193, 0.07668), least singular value 0.27090.
#[test]
fn a_plane_through_five_points() {
    let metres = |point: [i64; 3]| point.map(|x| Length::from_nm(x * 1_000_000_000));
    let points = [[0, -3, 0], [4, 0, 0], [3, -1, 1], [1, -2, 1], [-1, -4, -3]].map(metres);
    let fit = PlaneFit::to(&points).unwrap();
    // The normal points up, so that its level part points down the slope.
    near(fit.pitch_deg, 0.07668f64.acos_deg(), 1e-3);
    near(fit.azimuth_deg, 0.57869f64.atan2_deg(-0.81193), 1e-3);
    near(fit.rms_mm, 1000.0 * 0.27090 / 5f64.sqrt(), 5e-3);
}

/// Bands all round a square post base of side `s` cover `4 (s w + w²)`: 240 in² for 4 and 6 in, and two coats of 1/8 in
/// are 60 in³ (geometry). With the lower side open, round a flange of `s + w`, it is `w (s + w)` less: 180 in², 45 in³.
/// A US gallon is 231 in³ (NIST Handbook 44, Appendix C), so that 14 such posts take 2.73 gal, about 1 gal on 12.83 sq ft
/// of one coat.
#[test]
fn three_course_work_round_a_square_base() {
    let mut job = job();
    job["assemblies"]["post"]["deck_flashing"] = json!({
        "width": "10 in", "down": "5 in", "up": "5 in", "cone_diameter": "2 in", "dried_in": "three_course",
    });
    job["practice"] = json!({ "three_course_allowed": true, "mesh_width": "6 in", "cement_waste": 0 });
    job["slopes"][0]["posts"] = json!([]);
    job["slopes"][0]["post_grids"] = json!([{
        "name": "A", "assembly": "post", "u": "2 ft", "v": "4 ft",
        "columns": 7, "column_spacing": "4 ft", "rows": 2, "row_spacing": "5 ft",
    }]);
    let takeoff = takeoff_of(&job);
    let areas = numbers(&takeoff["slopes"][0]["three_course"], "area_mm2");
    assert_eq!(areas.len(), 14);
    areas.iter().for_each(|area| near(area / 645.16, 240.0 - 60.0, 1e-9));
    let line = |item: &str| {
        let lines = takeoff["materials"].as_array().unwrap();
        lines.iter().find(|line| line["item"] == item).unwrap().clone()
    };
    near(line("roof cement")["need"].as_f64().unwrap() / 16_387.064, 14.0 * 45.0, 1e-9);
    let gallons = line("roof cement, containers")["need"].as_f64().unwrap();
    near(gallons, 14.0 * 45.0 / 231.0, 1e-12);
    near(14.0 * 2.0 * 180.0 / 144.0 / gallons, 12.83, 5e-3);
    assert_eq!(line("roof cement, containers")["bring"], 3.0);
}

/// Angles by the standard library, which is not what is tested.
trait Degrees {
    fn acos_deg(self) -> f64;
    fn atan2_deg(self, other: f64) -> f64;
}

#[allow(clippy::disallowed_methods, reason = "a reference beside the core's own functions")]
impl Degrees for f64 {
    fn acos_deg(self) -> f64 {
        self.acos().to_degrees()
    }

    fn atan2_deg(self, other: f64) -> f64 {
        self.atan2(other).to_degrees()
    }
}
