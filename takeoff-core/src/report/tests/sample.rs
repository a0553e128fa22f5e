//! Takeoffs of jobs: the fixtures, and the plain gable with something changed.
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use serde_json::{Value, json};

use crate::api::read_and_document;
use crate::job::Files;
use crate::layout::{Layout, layout};
use crate::materials::Material;
use crate::model::Job;
use crate::report::document::Takeoff;

fn fixtures() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../fixtures")
}

/// The takeoffs of all fixtures, then of roofs of every shape.
pub(in crate::report) fn all() -> Vec<Takeoff> {
    let mut cases: Vec<PathBuf> =
        fs::read_dir(fixtures()).unwrap().map(|case| case.unwrap().path()).collect();
    cases.sort();
    let cases = cases.iter().filter(|case| case.join("job.json").exists()).map(|case| {
        let text = fs::read_to_string(case.join("job.json")).unwrap();
        let named = Job::files_named(&text);
        let files =
            named.into_iter().map(|name| (name.clone(), fs::read_to_string(case.join(name)).unwrap()));
        read_and_document(&text, &files.collect()).unwrap()
    });
    cases.chain([every_cut(), hips(), pan_and_cover()]).collect()
}

/// The layout of the two arrays at the least cost, looked for once.
pub(in crate::report) fn laid() -> Layout {
    static LAID: OnceLock<Layout> = OnceLock::new();
    let of_fixture = || {
        let [text, rafters, prices] = ["job.json", "rafters.csv", "prices.csv"]
            .map(|name| fs::read_to_string(fixtures().join("least-cost-arrays").join(name)).unwrap());
        let files = Files::from([("rafters.csv".to_owned(), rafters), ("prices.csv".to_owned(), prices)]);
        layout(&Job::read(&text, &files).unwrap()).unwrap().layout
    };
    LAID.get_or_init(of_fixture).clone()
}

/// The plain gable.
pub(in crate::report) fn gable() -> Takeoff {
    edited(|_| ())
}

/// The plain gable with its job file edited.
pub(in crate::report) fn edited(edit: impl Fn(&mut Value)) -> Takeoff {
    let [text, prices] = ["job.json", "prices.csv"]
        .map(|name| fs::read_to_string(fixtures().join("plain-gable").join(name)).unwrap());
    let mut job: Value = serde_json::from_str(&text).unwrap();
    edit(&mut job);
    read_and_document(&job.to_string(), &Files::from([("prices.csv".to_owned(), prices)])).unwrap()
}

/// The gable with these posts, each at `u`, `v` in inches.
fn posts<'n>(job: &mut Value, places: impl IntoIterator<Item = (&'n str, f64, f64)>) {
    let post = |(name, u, v): (&str, f64, f64)| json!({"name": name, "assembly": "post-7", "u": format!("{u} in"), "v": format!("{v} in")});
    job["slopes"][0]["posts"] = places.into_iter().map(post).collect();
}

/// Every kind of cut. Noses are at −1 1/2 + k · 13 1/4 in, joints at multiples of 12 in, 6 in further right in
/// every other course; a tile is 13 × 16 1/2 in, so that an opening of 12 in across its middle severs it.
fn every_cut() -> Takeoff {
    edited(|job| {
        posts(
            job,
            [("hole", 56.0, 31.0), ("side", 155.0, 31.0), ("nose", 102.0, 39.0), ("wide", 215.5, 126.0)],
        );
        let mut wide = job["assemblies"]["post-7"].clone();
        wide["post_diameter"] = json!("11 1/2 in");
        wide["deck_flashing"] = json!({
            "width": "20 in", "down": "9 in", "up": "14 in", "cone_diameter": "12 in", "cone_height": "4 in"
        });
        wide["top_flashing"] = json!({"width": "24 in", "down": "10 in", "up": "14 in"});
        job["assemblies"]["wide"] = wide;
        job["slopes"][0]["posts"][3]["assembly"] = json!("wide");
    })
}

/// A roof in millimetres, between a hip and a valley, with a chimney, a wall, and the world about it.
fn hips() -> Takeoff {
    edited(|job| {
        job["display"] = json!("metric");
        let slope = &mut job["slopes"][0];
        slope["outline"] = json!([
            ["0", "0"],
            ["6 m", "0"],
            ["6 m", "0.6 m"],
            ["11.6 m", "0.6 m"],
            ["8 m", "5.2 m"],
            ["3 m", "5.2 m"]
        ]);
        slope["edges"] = json!(["eave", "wall", "eave", "hip", "ridge", "valley"]);
        slope["holes"] = json!([{"name": "chimney", "outline": [["7 m", "2 m"], ["7 m", "3 m"], ["8 m", "3 m"], ["8 m", "2 m"]]}]);
        slope["place"] = json!({"origin": ["0", "0", "3 m"], "azimuth": "160 deg"});
        slope.as_object_mut().unwrap().remove("setbacks");
        posts(
            job,
            [
                ("A1", 40.0, 20.0),
                ("A2", 140.0, 40.0),
                ("A3", 260.0, 80.0),
                ("B1", 290.0, 120.0),
                ("C1", 200.0, 170.0),
            ],
        );
    })
}

/// Two-piece tile.
fn pan_and_cover() -> Takeoff {
    edited(|job| {
        let tile = job["tiles"]["flat-13"].as_object_mut().unwrap();
        tile.remove("width");
        tile.remove("lap_side");
        tile.insert("cover".to_owned(), json!("10 in"));
        tile.insert("pan_and_cover".to_owned(), json!({"pan_width": "8 in", "cover_width": "6 in"}));
        posts(job, [("A1", 56.0, 37.0), ("A2", 152.0, 37.0), ("B1", 61.0, 90.0)]);
    })
}

/// A commercial slope of 106 × 64 ft with 400 posts.
pub(in crate::report) fn commercial() -> Takeoff {
    edited(|job| {
        job["slopes"][0]["outline"] =
            json!([["0", "0"], ["106 ft", "0"], ["106 ft", "64 ft"], ["0", "64 ft"]]);
        let names: Vec<String> =
            (0..400).map(|i| format!("{}{}", char::from(b'A' + (i / 25) as u8), i % 25 + 1)).collect();
        let place = |(i, name)| (name, 32.0 + 48.0 * (i % 25) as f64, 30.0 + 46.0 * (i / 25) as f64);
        posts(job, names.iter().map(String::as_str).enumerate().map(place));
    })
}

/// The gable with this name for everything that has one.
///
/// A job refuses names with characters that nobody sees: those are put into the takeoff of a job without them.
pub(in crate::report) fn named(name: &str) -> Takeoff {
    let seen: String = name.chars().filter(|&c| !c.is_control() && c != '\u{202e}').collect();
    let mut takeoff = edited(|job| {
        let text = job.to_string();
        let written = json!(seen).to_string();
        let text = ["Fernhill Lane 12", "south", "flat-13", "felt-30", "post-7", "A1", "storm collar"]
            .iter()
            .fold(text, |text, old| text.replace(&format!("\"{old}\""), &written));
        *job = serde_json::from_str(&text).unwrap();
    });
    takeoff.job = name.to_owned();
    for slope in &mut takeoff.slopes {
        slope.name = name.to_owned();
        slope.posts[0].name = name.to_owned();
        slope.tiles[0].piece = name.to_owned();
    }
    for line in takeoff.materials.iter_mut().filter(|line| line.item == Material::Item(seen.clone())) {
        line.item = Material::Item(name.to_owned());
    }
    takeoff
}
