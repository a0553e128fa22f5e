//! Small random jobs.
use serde_json::{Value, json};

use crate::random_parts::{arrays, assembly, felt, kept, labour, prices, rafters, slope, tile};
use crate::rng::Rng;
use crate::small_job::{Array, GivenPost, SIXTEENTH, SmallJob, inches, length};

impl SmallJob {
    /// The random job of a seed.
    pub(crate) fn random(seed: u64) -> SmallJob {
        let rng = &mut Rng::new(seed);
        let arrays = arrays(rng);
        let swept = |array: &Array| {
            let [left, right, down, up] = array.shift;
            [array.u - left, array.v - down, array.u + array.width() + right, array.v + array.height() + up]
        };
        let right = arrays.iter().map(|array| swept(array)[2]).max().unwrap_or(0);
        let top = arrays.iter().map(|array| swept(array)[3]).max().unwrap_or(0);
        // A chimney over the arrays, and a hip to the right of them.
        let chimney = rng.one_in(4).then(|| [right - inches(24), top + rng.between(8, 160)]);
        let height =
            top + rng.between(inches(4), inches(24)) + if chimney.is_some() { inches(30) } else { 0 };
        let width = right + rng.between(inches(4), inches(20));
        let hip = rng.one_in(4).then(|| inches(4 + rng.between(0, 8)));
        let (rafters, rafter_width) = (rafters(rng, width), inches(1) + 8);
        let kept = kept(rng, &arrays, &rafters);
        let replaced = GivenPost {
            name: "old".into(),
            u: arrays[0].u + inches(9),
            v: arrays[0].v + arrays[0].module[1] / 2,
            fixed: None,
        };
        let (prices, staple_price) = prices(rng);
        let staple_spacing = inches(rng.between(3, 6));
        let staple_waste = rng.pick(&[0.0, 0.05]);
        let least_margin = rng.pick(&[4, 4, 2, 6]);
        let cost_of_failing = prices.is_some().then(|| rng.between(0, 60)).filter(|_| rng.one_in(3));
        let mut practice = json!({
            "least_margin": length(least_margin), "staple_spacing": length(staple_spacing),
            "hand_clearance": length(rng.between(16, 48)), "least_web": length(rng.between(8, 24)),
            "least_top_tuck": length(rng.between(24, 56)), "three_course_allowed": true,
            "patch_underlap": length(rng.between(32, 80)), "waste": { "staple": staple_waste },
            "breakage": {
                "cut": rng.between(0, 20) as f64 / 100.0, "removed": rng.between(0, 6) as f64 / 100.0,
                "loosened": rng.between(0, 3) as f64 / 100.0, "recut": rng.one_in(2),
            },
        });
        if let Some(cost) = cost_of_failing {
            practice["cost_of_failing"] = format!("{cost}.00").into();
        }
        let corners = match hip {
            Some(hip) => json!([
                ["0", "0"],
                [length(width + hip), "0"],
                [length(width), length(height)],
                ["0", length(height)]
            ]),
            None => json!([
                ["0", "0"],
                [length(width), "0"],
                [length(width), length(height)],
                ["0", length(height)]
            ]),
        };
        let mut slope = slope(rng);
        slope["outline"] = corners;
        slope["edges"] = json!(["eave", if hip.is_some() { "hip" } else { "rake" }, "ridge", "rake"]);
        if let Some([u, v]) = chimney {
            let [right, upper] = [u + inches(16), v + inches(18)].map(length);
            let [u, v] = [u, v].map(length);
            slope["holes"] = json!([{ "outline": [[u, v], [right, v], [right, upper], [u, upper]] }]);
        }
        if rng.one_in(4) {
            let edges = rng.pick(&[&["eave"][..], &["rake", "ridge"]]);
            slope["perimeter"] = json!({ "width": length(rng.between(64, 640)), "edges": edges });
        }
        slope["rafters"] = json!({
            "lines": rafters.iter().map(|[lower, upper]| json!({ "lower": length(*lower), "upper": length(*upper) })).collect::<Vec<_>>(),
            "width": length(rafter_width),
        });
        let mut base = json!({
            "format": "tilepost-job/1", "name": format!("small {seed}"), "tiles": { "tile": tile(rng) },
            "underlayments": { "felt": felt(rng) }, "assemblies": { "post": assembly(rng) }, "practice": practice,
            "slopes": [slope],
        });
        fit_exposure(&mut base);
        if prices.is_some() {
            base["prices"] = "prices.csv".into();
        }
        if prices.is_none() || rng.one_in(2) {
            base["bid"] = json!({ "currency": "USD", "labour": labour(rng) });
        }
        SmallJob {
            base,
            prices,
            staple: staple_price * (1.0 + staple_waste),
            staple_spacing,
            least_margin,
            cost_of_failing: cost_of_failing.map(|cost| cost as f64),
            height,
            rafters,
            rafter_width,
            arrays,
            kept,
            replaced: vec![replaced],
        }
    }
}

/// Gives the courses an exposure within the limits of the tile.
fn fit_exposure(base: &mut Value) {
    let tile = &base["tiles"]["tile"];
    let sixteenths = |text: &Value| {
        let mm: f64 =
            text.as_str().and_then(|text| text.strip_suffix(" mm")).and_then(|mm| mm.parse().ok()).unwrap();
        (mm * 1e6).round() as i64 / SIXTEENTH
    };
    let single = sixteenths(&tile["length"]) - sixteenths(&tile["least_head_lap"]);
    let greatest = if tile["laps"] == "double" { single / 2 } else { single };
    let courses = &mut base["slopes"][0]["courses"];
    let below = courses["below_greatest"].as_i64().unwrap_or(0);
    let first_nose = courses["first_nose"].clone();
    *courses = json!({ "first_nose": first_nose, "exposure": length(greatest - below) });
}
