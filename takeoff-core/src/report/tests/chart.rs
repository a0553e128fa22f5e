//! The chart of the spares, read back by an XML reader.
use roxmltree::{Document, Node};

use super::super::spares_chart;
use super::{HOSTILE, sample};
use crate::report::document::Takeoff;
use crate::spares::TileSpares;

/// Every chart of the samples with what it shows.
fn charts(each: impl Fn(&TileSpares, &Document<'_>)) {
    let mut drawn = 0;
    for takeoff in sample::all() {
        for of_kind in &takeoff.spares {
            let svg = spares_chart(&takeoff, &of_kind.tile.to_string()).unwrap();
            each(of_kind, &Document::parse(&svg).unwrap());
            drawn += 1;
        }
    }
    assert!(drawn > 5, "nothing was drawn");
}

fn bars<'d>(document: &'d Document<'_>) -> Vec<Node<'d, 'd>> {
    document.descendants().filter(|node| node.has_attribute("data-spares")).collect()
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).unwrap().parse().unwrap()
}

fn texts<'d>(document: &'d Document<'_>) -> Vec<&'d str> {
    document.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect()
}

#[test]
fn a_bar_is_as_high_as_its_chance() {
    charts(|of_kind, document| {
        let bars = bars(document);
        assert_eq!(bars.len(), of_kind.spares.alternatives.len());
        // The scale is read off the first bar that is high enough to be exact.
        let scale = bars.iter().zip(&of_kind.spares.alternatives).find_map(|(bar, of)| {
            (number(*bar, "height") > 10.0).then(|| number(*bar, "height") / of.stockout_probability)
        });
        for (bar, of) in bars.iter().zip(&of_kind.spares.alternatives) {
            assert_eq!(bar.attribute("data-spares").unwrap(), of.spares.to_string());
            let expected = scale.unwrap_or(0.0) * of.stockout_probability;
            assert!((number(*bar, "height") - expected).abs() < 1.6, "{of:?}");
        }
    });
}

#[test]
fn the_number_to_buy_alone_is_dark_and_named() {
    charts(|of_kind, document| {
        let dark: Vec<Node> =
            bars(document).into_iter().filter(|bar| bar.attribute("fill") == Some("#1d2733")).collect();
        assert_eq!(dark.len(), 1);
        assert_eq!(dark[0].attribute("data-spares").unwrap(), of_kind.spares.spares.to_string());
        let texts = texts(document);
        assert!(texts.iter().any(|text| *text == format!("buy {}", of_kind.spares.spares)));
        assert!(texts.iter().any(|text| text.contains("asked for")));
        assert!(texts.contains(&"tiles bought"));
    });
}

#[test]
fn bars_and_words_stay_on_the_chart() {
    charts(|_, document| {
        let root = document.root_element();
        let [width, height] = [number(root, "width"), number(root, "height")];
        for bar in bars(document) {
            let [x, y] = [number(bar, "x"), number(bar, "y")];
            assert!(52.0 <= x + 0.1 && x + number(bar, "width") <= 464.2, "{x}");
            assert!(74.0 <= y + 0.1 && y + number(bar, "height") <= 254.1, "{y}");
        }
        for text in root.descendants().filter(|node| node.has_tag_name("text")) {
            let [x, y] = [number(text, "x"), number(text, "y")];
            // 0.62 em is wider than the letters are on average.
            let size = text.attribute("font-size").map_or(11.0, |size| size.parse().unwrap());
            let wide = 0.62 * size * text.text().unwrap().chars().count() as f64;
            let right = match text.attribute("text-anchor").unwrap() {
                "start" => x + wide,
                "middle" => x + wide / 2.0,
                _ => x,
            };
            assert!(right <= width + 8.0 && (8.0..height).contains(&y), "{:?}", text.text());
        }
    });
}

#[test]
fn a_wide_chart_has_few_numbers_and_many_bars() {
    let takeoff = sample::commercial();
    let svg = spares_chart(&takeoff, &takeoff.spares[0].tile.to_string()).unwrap();
    let document = Document::parse(&svg).unwrap();
    assert!(bars(&document).len() > 40);
    let numbers = texts(&document).iter().filter(|text| text.parse::<u64>().is_ok()).count();
    assert!((4..25).contains(&numbers), "{numbers}");
    assert!(svg.len() < 40_000);
}

#[test]
fn any_name_is_a_text_and_an_unknown_one_no_chart() {
    for name in HOSTILE {
        let takeoff: Takeoff = sample::named(name);
        for of_kind in &takeoff.spares {
            let svg = spares_chart(&takeoff, &of_kind.tile.to_string()).unwrap();
            let document = Document::parse(&svg).unwrap();
            assert!(document.descendants().all(|node| !node.has_tag_name("script")));
        }
    }
    assert_eq!(spares_chart(&sample::gable(), "no such tile"), None);
}
