//! What a slope comes to: overhang, bonds, grids of posts, defaults, setbacks.
use serde_json::json;

use super::{codes, good, read, with};
use crate::model::Georeference;
use crate::model::{Assumption, Pieces};
use crate::probability::Rate;
use crate::units::Length;

fn inches(text: &str) -> Length {
    Length::parse(text).unwrap()
}

#[test]
fn the_plain_gable_comes_out_as_written() {
    let job = read(&good()).unwrap();
    assert_eq!(job.findings(), []);
    let slope = &job.slopes[0];
    assert_eq!(slope.posts.len(), 14);
    assert_eq!(slope.posts[6].path, "/slopes/0/posts/6");
    assert_eq!(slope.overhang, inches("1 1/2 in"));
    assert_eq!(slope.bond, [Length::ZERO, inches("6 in")]);
    // 8 in, 32 in … 440 in: 456 in is the outline's right edge.
    assert_eq!(slope.rafters.as_ref().unwrap().lines.len(), 19);
    assert!(slope.battens.is_none());
    assert!(matches!(slope.tile.pieces, Pieces::One { width, .. } if width == inches("13 in")));
}

#[test]
fn the_overhang_is_never_below_zero() {
    for (courses, overhang) in [
        (json!({ "noses": ["-2 in", "11 in"] }), "2 in"),
        (json!({ "noses": ["2 in", "15 in"] }), "0"),
        (json!({ "overhang": "2 1/2 in", "ridge_gap": "3 in" }), "2 1/2 in"),
    ] {
        let job = read(&with(good(), &json!({ "/slopes/0/courses": courses }))).unwrap();
        assert_eq!(job.slopes[0].overhang, inches(overhang), "{courses}");
    }
    let given = json!({ "/slopes/0/overhang": "3 in" });
    assert_eq!(read(&with(good(), &given)).unwrap().slopes[0].overhang, inches("3 in"));
}

#[test]
fn bonds_are_fractions_of_the_cover_width() {
    let bond = json!({ "/slopes/0/columns/bond": ["0", "1/3", "2/3"], "/tiles/flat-13/cover": "12.5 in" });
    let job = read(&with(good(), &bond)).unwrap();
    // 317.5 mm / 3 = 105.8333… mm, and twice that, each rounded once.
    let nm = job.slopes[0].bond.iter().map(|offset| offset.nm()).collect::<Vec<_>>();
    assert_eq!(nm, [0, 105_833_333, 211_666_667]);
}

#[test]
fn grids_are_posts_in_rows_and_columns() {
    let grid = json!({ "name": "G", "assembly": "post-7", "u": "5 ft", "v": "9 ft", "columns": 3,
        "column_spacing": "4 ft", "rows": 2, "row_spacing": "3 ft 3 in" });
    let job =
        read(&with(good(), &json!({ "/slopes/0/post_grids": [grid], "/slopes/0/posts": null }))).unwrap();
    let posts = &job.slopes[0].posts;
    let names: Vec<&str> = posts.iter().map(|post| post.name.as_str()).collect();
    assert_eq!(names, ["G-1-1", "G-1-2", "G-1-3", "G-2-1", "G-2-2", "G-2-3"]);
    assert_eq!((posts[5].at.u, posts[5].at.v), (inches("13 ft"), inches("12 ft 3 in")));
    assert_eq!(posts[5].path, "/slopes/0/post_grids/0");
}

#[test]
fn a_hung_tile_has_battens_by_itself() {
    let job = read(&with(good(), &json!({ "/tiles/flat-13/held": "hung" }))).unwrap();
    let battens = job.slopes[0].battens.as_ref().unwrap();
    assert_eq!((battens.height, battens.width), (inches("3/4 in"), inches("1 1/2 in")));
    let assumed = Assumption {
        what: "height of a batten, `south`".to_owned(),
        value: "3/4 in".to_owned(),
        set_by_job: false,
    };
    assert!(job.assumptions.contains(&assumed));
}

/// The defaults of the trade as estimators give them, one by one.
/// What three-course work assumes is listed where an assembly asks for it, and only there.
#[test]
fn mesh_and_cement_are_assumed_where_they_are_asked_for() {
    let of = |job: &crate::model::Job| -> Vec<(String, String, bool)> {
        let ours = ["three-course", "mesh", "cement"];
        let listed =
            job.assumptions.iter().filter(|listed| ours.iter().any(|word| listed.what.contains(word)));
        listed.map(|listed| (listed.what.clone(), listed.value.clone(), listed.set_by_job)).collect()
    };
    assert_eq!(of(&read(&with(good(), &json!({ "/practice/mesh_width": "6 in" }))).unwrap()), []);
    let asked = json!({
        "/assemblies/post-7/deck_flashing/dried_in": "three_course", "/practice/three_course_allowed": true,
        "/practice/mesh_width": "6 in",
    });
    let listed = |what: &str, value: &str, set: bool| (what.to_owned(), value.to_owned(), set);
    assert_eq!(
        of(&read(&with(good(), &asked)).unwrap()),
        [
            listed("three-course work is allowed by the building official", "yes", true),
            listed("width of the mesh", "6 in", true),
            listed("least of the mesh beyond the edge of a deck flange", "1 1/2 in", false),
            listed("coats of roof cement", "2", false),
            listed("one coat of roof cement", "1/8 in", false),
            listed("container of roof cement", "128.0 fl oz", false),
            listed("roll of mesh", "1800 in", false),
            listed("roof cement lost, as a share", "0.1", false),
            listed("mesh lost, as a share", "0.1", false),
        ]
    );
}

#[test]
fn what_is_left_out_is_assumed_and_listed() {
    let job = read(&with(good(), &json!({ "/practice": null }))).unwrap();
    let p = &job.practice;
    for (length, usual) in [
        (p.least_web, "1 in"),
        (p.hand_clearance, "2 in"),
        (p.least_margin, "1/4 in"),
        (p.drain, "1 in"),
        (p.deck_tuck, "2 in"),
        (p.patch_underlap, "4 in"),
        (p.patch_side_margin, "4 in"),
        (p.least_top_tuck, "3 in"),
        (p.least_side_cover, "3 in"),
        (p.bead_inset, "3/4 in"),
        (p.staple_spacing, "4 in"),
        (p.three_course.mesh_width, "4 in"),
        (p.three_course.film, "1/8 in"),
        (p.three_course.roll, "150 ft"),
    ] {
        assert_eq!(length, inches(usual));
    }
    assert!((p.cartridge_mm3 - crate::units::Volume::parse("10.1 fl oz").unwrap().mm3()).abs() < 1e-6);
    assert_eq!((p.service_level, p.pieces_for_severed, p.sealant_waste), (0.95, 2, 0.1));
    let cement = &p.three_course;
    assert_eq!((cement.coats, cement.cement_waste, cement.mesh_waste), (2, 0.1, 0.1));
    assert!((cement.container_mm3 - crate::units::Volume::parse("1 gal").unwrap().mm3()).abs() < 1e-6);
    let b = &p.breakage;
    assert_eq!([b.cut, b.removed, b.loosened, b.walked], [0.06, 0.02, 0.01, 0.005].map(Rate::Known));
    assert!(b.recut);
    assert!(job.assumptions.iter().filter(|assumption| assumption.set_by_job).count() == 2, "the two beads");
    let metric = read(&with(good(), &json!({ "/display": "metric" }))).unwrap();
    let web = &metric.assumptions[0];
    assert_eq!((web.value.as_str(), web.set_by_job), ("25.4 mm", true));
}

#[test]
fn surveyed_points_give_the_pitch_when_it_is_left_out() {
    let points = json!({ "points": [["0", "0", "0"], ["4 m", "0", "0"], ["0", "12 m", "5 m"]] });
    let job = read(&with(good(), &json!({ "/slopes/0/place": points, "/slopes/0/pitch": null }))).unwrap();
    assert!((job.slopes[0].pitch.tan() - 5.0 / 12.0).abs() < 1e-12);
    assert!(matches!(&job.slopes[0].place, Some(Georeference::Surveyed(points)) if points.len() == 3));
    let steep = json!({ "points": [["0", "0", "0"], ["4 m", "0", "0"], ["0", "1 m", "6 m"]] });
    let problems =
        read(&with(good(), &json!({ "/slopes/0/place": steep, "/slopes/0/pitch": null }))).unwrap_err();
    assert_eq!(codes(&problems), [("out-of-limits", "/slopes/0")]);
    // A place that is wrong says so, and does not ask for the pitch too.
    let broken = json!({ "/slopes/0/place": { "points": [] }, "/slopes/0/pitch": null });
    assert_eq!(codes(&read(&with(good(), &broken)).unwrap_err()), [("no-plane", "/slopes/0/place/points")]);
}

#[test]
fn setbacks_hold_for_flashings_where_asked() {
    // The flashing's upper edge is 7 in above the post's point, the setback 18 in below the ridge at 204 in.
    let near = json!({ "/slopes/0/posts/0/v": "180 in" });
    assert_eq!(codes(read(&with(good(), &near)).unwrap().findings()), []);
    let held = json!({ "/slopes/0/posts/0/v": "180 in", "/slopes/0/setbacks_hold_flashing": true });
    let job = read(&with(good(), &held)).unwrap();
    assert_eq!(codes(job.findings()), [("inside-setback", "/slopes/0/posts/0")]);
    assert_eq!(
        job.findings()[0].message,
        "the post `A1` has its deck flashing 17 in from the ridge, within its setback of 18 in"
    );
}
