//! The map of what an array costs over its shift, read back by an XML reader.
use roxmltree::{Document, Node};

use super::super::shift_map;
use super::{HOSTILE, sample};
use crate::layout::{Layout, ShiftMap};
use crate::model::Display;

fn map_of(laid: &Layout, array: usize) -> String {
    let array = &laid.arrays[array];
    shift_map(laid, &array.slope, &array.array).unwrap()
}

/// The layout with another map of its first array, and where that goes.
fn with_map(map: ShiftMap, right_mm: f64, up_mm: f64) -> Layout {
    let mut laid = sample::laid();
    laid.arrays[0].map = Some(map);
    (laid.arrays[0].right_mm, laid.arrays[0].up_mm) = (right_mm, up_mm);
    laid
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).unwrap().parse().unwrap()
}

fn texts<'d>(document: &'d Document<'_>) -> Vec<&'d str> {
    document.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect()
}

/// The rectangles of each tone: left, upper, width, height.
fn rectangles<'d>(document: &'d Document<'_>) -> Vec<(&'d str, [f64; 4])> {
    let mut found = Vec::new();
    for node in document.descendants().filter(|node| node.has_attribute("data-tone")) {
        for part in node.attribute("d").unwrap().split_inclusive('z') {
            let numbers: Vec<f64> = part
                .split(|c: char| !(c.is_ascii_digit() || c == '.'))
                .filter(|text| !text.is_empty())
                .map(|text| text.parse().unwrap())
                .collect();
            found.push((
                node.attribute("data-tone").unwrap(),
                [numbers[0], numbers[1], numbers[2], numbers[3]],
            ));
        }
    }
    found
}

/// Cells are 340/25 = 13.6 wide and 340/49 = 6.9 high; each lies in one rectangle, whose tone is that of its cost.
#[test]
fn each_cell_has_the_tone_of_its_cost() {
    let laid = sample::laid();
    for (place, array) in laid.arrays.iter().enumerate() {
        let svg = map_of(&laid, place);
        let document = Document::parse(&svg).unwrap();
        let drawn = rectangles(&document);
        let map = array.map.as_ref().unwrap();
        let costs = || map.cost.iter().flatten().flatten().copied();
        let (least, greatest) = (costs().fold(f64::MAX, f64::min), costs().fold(0.0, f64::max));
        assert_eq!((map.right_mm.len(), map.up_mm.len()), (25, 49));
        for (row, costs) in map.cost.iter().enumerate() {
            for (column, cost) in costs.iter().enumerate() {
                let [x, y] = [76.0 + 13.6 * (column as f64 + 0.5), 86.0 + 6.9 * (48.5 - row as f64)];
                let here: Vec<&str> = drawn
                    .iter()
                    .filter(|(_, [left, upper, wide, high])| {
                        (*left..left + wide).contains(&x) && (*upper..upper + high).contains(&y)
                    })
                    .map(|(tone, _)| *tone)
                    .collect();
                let tone = cost.map(|cost| ((cost - least) / (greatest - least) * 7.0).min(6.0) as usize);
                let tone = tone.map_or("none".to_owned(), |tone| tone.to_string());
                assert_eq!(here, [tone], "{row} {column}");
            }
        }
        let legend = texts(&document);
        assert!(legend.contains(&format!("goes here: {} USD", array.additive_cost).as_str()));
        let now = array.unmoved.as_ref().unwrap().additive_cost;
        assert!(legend.contains(&format!("is here now: {now} USD").as_str()));
        assert!(legend.iter().any(|text| text.starts_with(&format!("{least:.2} to "))));
        assert!(legend.iter().any(|text| text.ends_with(&format!(" to {greatest:.2}"))));
    }
}

/// An array that goes from the middle of the map to its lower left corner goes 12 cells to the left, 24 down.
#[test]
fn the_marks_are_where_the_array_is_and_goes() {
    let map = sample::laid().arrays[0].map.clone().unwrap();
    let svg = map_of(&with_map(map, -152.4, -152.4), 0);
    let document = Document::parse(&svg).unwrap();
    let marks = document.descendants().find(|node| node.attribute("class") == Some("marks")).unwrap();
    let ring = marks.descendants().find(|node| node.has_tag_name("circle")).unwrap();
    let [x, y] = [number(ring, "cx"), number(ring, "cy")];
    assert!((x - (76.0 + 12.5 * 13.6)).abs() < 0.06 && (y - (86.0 + 24.5 * 6.9)).abs() < 0.06);
    let (x, y) = (x - 12.0 * 13.6, y + 24.0 * 6.9 - 5.0);
    let diamond = format!("M{x:.1} {y:.1}l5 5");
    assert!(marks.descendants().any(|node| node.attribute("d").is_some_and(|way| way.starts_with(&diamond))));
}

#[test]
fn an_array_that_can_not_be_moved_has_a_map_of_one_cell() {
    let one = ShiftMap {
        right_mm: vec![0.0],
        up_mm: vec![0.0],
        cost: vec![vec![Some(1393.22)]],
        faults: vec![vec![0]],
    };
    let svg = map_of(&with_map(one, 0.0, 0.0), 0);
    let document = Document::parse(&svg).unwrap();
    assert_eq!(rectangles(&document), [("0", [76.0, 86.0, 56.0, 56.0])]);
    let texts = texts(&document);
    assert!(texts.contains(&"It stays where it is.") && texts.contains(&"is and stays here: 1393.22 USD"));
    assert!(texts.contains(&"1393.22") && !texts.iter().any(|text| text.contains("moved")));
}

#[test]
fn a_map_of_one_row_has_one_axis() {
    let row = ShiftMap {
        right_mm: (0..25).map(|step| f64::from(step) * 5.0 - 60.0).collect(),
        up_mm: vec![0.0],
        cost: vec![(0..25).map(|step| (step < 20).then_some(1400.0 + f64::from(step))).collect()],
        faults: vec![(0..25).map(|step| u32::from(step == 3)).collect()],
    };
    let laid = Layout { display: Display::Metric, ..with_map(row, -60.0, 0.0) };
    let svg = map_of(&laid, 0);
    let document = Document::parse(&svg).unwrap();
    let texts = texts(&document);
    for text in [
        "← moved left or right →",
        "60 mm",
        "20 mm",
        "0",
        "no layout within the limits",
        "with posts at fault",
    ] {
        assert!(texts.contains(&text), "{text} {texts:?}");
    }
    assert!(!texts.iter().any(|text| text.contains("moved up")));
}

#[test]
fn a_map_without_any_layout_is_hatched() {
    let none = ShiftMap {
        right_mm: vec![-10.0, 0.0],
        up_mm: vec![0.0, 10.0],
        cost: vec![vec![None; 2]; 2],
        faults: vec![vec![0; 2]; 2],
    };
    let svg = map_of(&with_map(none, -5.0, 5.0), 0);
    let document = Document::parse(&svg).unwrap();
    assert!(rectangles(&document).iter().all(|(tone, _)| *tone == "none"));
    assert!(svg.contains("url(#shift-1-none)"));
}

/// Relative luminance of WCAG 2.2 (from memory): each tone is darker than the one before by a fifth at least.
#[test]
fn tones_are_told_apart_in_grey() {
    let svg = map_of(&sample::laid(), 0);
    let document = Document::parse(&svg).unwrap();
    let luminances: Vec<f64> = document
        .descendants()
        .filter(|node| node.has_attribute("data-tone"))
        .map(|node| {
            let colour = node.attribute("fill").unwrap();
            let channel = |at: usize| {
                let value = f64::from(u8::from_str_radix(&colour[at..at + 2], 16).unwrap()) / 255.0;
                if value <= 0.040_45 {
                    value / 12.92
                } else {
                    crate::num::math::pow((value + 0.055) / 1.055, 2.4)
                }
            };
            0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
        })
        .collect();
    assert_eq!(luminances.len(), 7);
    assert!(luminances.windows(2).all(|pair| (pair[0] + 0.05) / (pair[1] + 0.05) > 1.2), "{luminances:?}");
}

#[test]
fn any_name_is_drawn_as_text() {
    for name in HOSTILE {
        let mut laid = sample::laid();
        laid.job = name.to_owned();
        laid.arrays[0].array = name.to_owned();
        laid.arrays[0].slope = name.to_owned();
        let svg = map_of(&laid, 0);
        let document = Document::parse(&svg).unwrap();
        assert!(document.descendants().all(|node| !node.has_tag_name("script")));
    }
    assert_eq!(shift_map(&sample::laid(), "south", "no such array"), None);
    assert_eq!(shift_map(&sample::laid(), "north", "large"), None);
}
