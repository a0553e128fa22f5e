//! The roof map, read back by an XML reader.
use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};

use roxmltree::{Document, Node};
use serde_json::json;

use super::super::{plain, roof_map};
use super::{HOSTILE, sample};
use crate::cuts::CutKind;
use crate::deck::TileClass;
use crate::report::document::{SlopeTakeoff, Takeoff};

/// Every roof map of the samples with its slope.
fn drawings(each: impl Fn(&Takeoff, &SlopeTakeoff, &Document<'_>)) {
    let mut drawn = 0;
    for takeoff in sample::all() {
        for slope in &takeoff.slopes {
            let svg = roof_map(&takeoff, &slope.name).unwrap();
            each(&takeoff, slope, &Document::parse(&svg).unwrap());
            drawn += 1;
        }
    }
    assert!(drawn > 1, "nothing was drawn");
}

fn with_attribute<'d>(document: &'d Document<'_>, name: &str) -> Vec<Node<'d, 'd>> {
    document.descendants().filter(|node| node.has_attribute(name)).collect()
}

#[test]
fn every_post_and_tile_can_be_found() {
    drawings(|_, slope, document| {
        let posts = with_attribute(document, "data-post");
        assert_eq!(posts.len(), slope.posts.len());
        for (node, post) in posts.iter().zip(&slope.posts) {
            assert_eq!(node.attribute("data-post"), Some(plain::printable(&post.name).as_str()));
            assert_eq!(node.attribute("data-u-mm").unwrap().parse::<f64>().unwrap(), post.u_mm);
            assert_eq!(node.attribute("data-v-mm").unwrap().parse::<f64>().unwrap(), post.v_mm);
            // The opening stands where it is on the roof, eave at the bottom.
            let opening = node.children().find(|node| node.has_tag_name("ellipse")).unwrap();
            let read = |name| opening.attribute(name).unwrap().parse::<f64>().unwrap();
            assert!((read("cx") - post.opening.u_mm).abs() < 0.06);
            assert!((read("cy") + post.opening.v_mm).abs() < 0.06);
        }
        let tiles: BTreeSet<_> = with_attribute(document, "data-tile")
            .iter()
            .filter_map(|node| node.attribute("data-tile"))
            .collect();
        assert_eq!(tiles, slope.tiles.iter().map(|tile| tile.tile.as_str()).collect());
        let ids: Vec<_> =
            with_attribute(document, "id").iter().filter_map(|node| node.attribute("id")).collect();
        assert_eq!(ids.len(), ids.iter().collect::<BTreeSet<_>>().len(), "an id stands twice");
    });
}

#[test]
fn letters_and_legend_count_alike() {
    drawings(|_, slope, document| {
        let cuts = |kind| slope.cuts.iter().filter(|cut| cut.kind == kind).count();
        let class = |class| slope.tiles.iter().filter(|tile| tile.class == class && !tile.excluded).count();
        let expected = [
            ("H", cuts(CutKind::Hole)),
            ("N", cuts(CutKind::Notch)),
            ("C", cuts(CutKind::Corner)),
            ("S", cuts(CutKind::Severed)),
            ("T", class(TileClass::Removed)),
            ("L", class(TileClass::Loosened)),
        ];
        let group = |name| document.descendants().find(|node| node.attribute("class") == Some(name)).unwrap();
        let mut letters: BTreeMap<&str, usize> = BTreeMap::new();
        for text in group("letters").descendants().filter(|node| node.has_tag_name("text")) {
            *letters.entry(text.text().unwrap()).or_default() += 1;
        }
        let legend: Vec<&str> = group("legend").descendants().filter_map(|node| node.text()).collect();
        for (letter, count) in expected {
            assert_eq!(letters.get(letter).copied().unwrap_or_default(), count, "{letter}");
            // The words stand before the letter of their sample.
            let at = legend.iter().position(|text| *text == letter).unwrap();
            assert!(
                legend[..at].iter().rev().any(|text| text.ends_with(&format!("({count})"))),
                "{letter} {count}"
            );
        }
    });
}

#[test]
fn bands_stand_where_they_are_and_the_legend_counts_them() {
    let drawn = Cell::new(0);
    drawings(|_, slope, document| {
        let bands = with_attribute(document, "data-bands");
        assert_eq!(bands.len(), slope.three_course.len());
        for (node, work) in bands.iter().zip(&slope.three_course) {
            assert_eq!(node.attribute("data-bands"), Some(plain::printable(&work.post).as_str()));
            let shape = node.children().find(|node| node.has_tag_name("path")).unwrap();
            let start = shape.attribute("d").unwrap().trim_start_matches('M');
            let start = &start[..start.find(|c: char| c.is_alphabetic()).unwrap()];
            let (x, y) = start.trim().split_once(' ').unwrap();
            let [left, lower, ..] = work.bands_mm[0];
            assert!((x.parse::<f64>().unwrap() - left).abs() < 0.06, "{start}");
            assert!((y.parse::<f64>().unwrap() + lower).abs() < 0.06, "{start}");
        }
        let legend = format!("three-course bands ({})", bands.len());
        assert_eq!(document.descendants().any(|node| node.text() == Some(&legend)), !bands.is_empty());
        drawn.set(drawn.get() + bands.len());
    });
    assert!(drawn.get() > 0, "no bands were drawn");
}

/// Three rafters, the middle one 1 m farther right at the ridge, 204 in up, than at the eave: it is drawn down to the lowest
/// noses, 1 1/2 in below the eave.
#[test]
fn a_crooked_rafter_is_drawn_as_it_runs() {
    let takeoff = sample::edited(|job| {
        let line = |lower: &str, upper: &str| json!({ "lower": lower, "upper": upper });
        let lines = [line("1 m", "1 m"), line("4 m", "5 m"), line("8 m", "8 m")];
        job["slopes"][0]["rafters"] = json!({ "width": "1 1/2 in", "lines": lines });
    });
    assert_eq!(takeoff.slopes[0].rafters_mm, [[1000.0, 1000.0], [4000.0, 5000.0], [8000.0, 8000.0]]);
    let svg = roof_map(&takeoff, &takeoff.slopes[0].name).unwrap();
    let document = Document::parse(&svg).unwrap();
    let at_noses = 4000.0 - 1000.0 * 1.5 / 204.0;
    let way = format!("M1000 38.1V-5181.6M{at_noses:.1} 38.1L5000 -5181.6M8000 38.1V-5181.6");
    assert!(document.descendants().any(|node| node.attribute("d") == Some(&way)), "{way}");
}

#[test]
fn every_mark_is_drawn_somewhere() {
    let kinds: BTreeSet<CutKind> = sample::all()
        .iter()
        .flat_map(|takeoff| &takeoff.slopes)
        .flat_map(|slope| &slope.cuts)
        .map(|cut| cut.kind)
        .collect();
    assert_eq!(kinds.len(), 4, "the samples hold no more than {kinds:?}");
}

#[test]
fn nothing_stands_off_the_sheet() {
    drawings(|_, slope, document| {
        let root = document.root_element();
        let view: Vec<f64> =
            root.attribute("viewBox").unwrap().split(' ').map(|number| number.parse().unwrap()).collect();
        let inside =
            |x: f64, y: f64| view[0] <= x && x <= view[0] + view[2] && view[1] <= y && y <= view[1] + view[3];
        for text in root.descendants().filter(|node| node.has_tag_name("text")) {
            if let (Some(x), Some(y)) = (text.attribute("x"), text.attribute("y")) {
                assert!(inside(x.parse().unwrap(), y.parse().unwrap()), "{:?} {x} {y}", text.text());
            }
        }
        for &[u, v] in slope.field_mm.iter().flatten() {
            assert!(inside(u, -v));
        }
    });
}

#[test]
fn paper_and_viewbox_have_the_scale_that_the_title_names() {
    drawings(|_, _, document| {
        let root = document.root_element();
        let millimetres =
            |name| root.attribute(name).unwrap().strip_suffix("mm").unwrap().parse::<f64>().unwrap();
        let view: Vec<f64> =
            root.attribute("viewBox").unwrap().split(' ').map(|number| number.parse().unwrap()).collect();
        let named =
            root.descendants().filter_map(|node| node.text()?.strip_prefix("scale 1 : ")).next().unwrap();
        let scale: f64 = named.parse().unwrap();
        assert!((view[2] / millimetres("width") / scale - 1.0).abs() < 1e-3);
        assert!((view[3] / millimetres("height") / scale - 1.0).abs() < 1e-3);
    });
}

#[test]
fn it_can_be_read_aloud_and_runs_nothing() {
    drawings(|takeoff, slope, document| {
        let root = document.root_element();
        let title = root.first_element_child().unwrap();
        assert_eq!(title.tag_name().name(), "title");
        let text = title.text().unwrap();
        assert!(
            text.contains(&plain::printable(&takeoff.job)) && text.contains(&plain::printable(&slope.name))
        );
        assert!(root.children().any(|node| node.has_tag_name("desc")));
        for node in root.descendants().filter(Node::is_element) {
            assert!(!["script", "style", "foreignObject", "image", "a"].contains(&node.tag_name().name()));
            assert!(node.attributes().all(|attribute| !attribute.name().starts_with("on")));
        }
    });
}

#[test]
fn any_name_is_drawn_as_text() {
    for name in HOSTILE {
        let takeoff = sample::named(name);
        for slope in &takeoff.slopes {
            let svg = roof_map(&takeoff, &slope.name).unwrap();
            let document = Document::parse(&svg).unwrap();
            let posts = with_attribute(&document, "data-post");
            let expected: Vec<String> = slope.posts.iter().map(|post| plain::printable(&post.name)).collect();
            assert_eq!(
                posts.iter().map(|node| node.attribute("data-post").unwrap()).collect::<Vec<_>>(),
                expected
            );
        }
    }
}

#[test]
fn four_hundred_posts_stay_light() {
    let takeoff = sample::commercial();
    let slope = &takeoff.slopes[0];
    assert!(slope.posts.len() >= 400 && slope.tiles.len() > 2000);
    let svg = roof_map(&takeoff, &slope.name).unwrap();
    assert!(svg.len() < 1_500_000, "{} bytes", svg.len());
}

#[test]
fn a_slope_that_is_not_there_has_no_drawing() {
    assert_eq!(roof_map(&sample::gable(), "no such slope"), None);
}
