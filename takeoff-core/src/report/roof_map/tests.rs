//! Checks of the parts of a drawing that can be checked alone.
use geo::{Area, BooleanOps, Coord, LineString, Polygon, Rect};
use proptest::prelude::*;

use super::super::markup::number;
use super::dimensions::{Place, spread};
use super::faces::clipped;
use super::paper::Paper;

/// A star about the origin: a simple polygon, seldom convex.
fn star() -> impl Strategy<Value = Vec<[f64; 2]>> {
    prop::collection::vec(20.0..300.0_f64, 3..12).prop_map(|radii| {
        let step = std::f64::consts::TAU / radii.len() as f64;
        let at = |(i, r): (usize, &f64)| [r * libm::cos(i as f64 * step), r * libm::sin(i as f64 * step)];
        radii.iter().enumerate().map(at).collect()
    })
}

fn polygon(ring: &[[f64; 2]]) -> Polygon {
    let coords = ring.iter().map(|&[x, y]| Coord { x, y });
    Polygon::new(LineString::from_iter(coords), Vec::new())
}

proptest! {
    /// The oracle is geo's intersection of polygons.
    #[test]
    fn a_face_is_the_footprint_within_the_rectangle(
        ring in star(),
        left in -250.0..0.0_f64, lower in -250.0..0.0_f64, width in 10.0..400.0_f64, height in 10.0..400.0_f64,
    ) {
        let cut = clipped(&ring, [left, lower, left + width, lower + height]);
        let frame = Rect::new(Coord { x: left, y: lower }, Coord { x: left + width, y: lower + height });
        let oracle = polygon(&ring).intersection(&frame.to_polygon()).unsigned_area();
        prop_assert!((polygon(&cut).unsigned_area() - oracle).abs() < 1e-3, "{} {}", polygon(&cut).unsigned_area(), oracle);
    }

    #[test]
    fn dimensions_keep_their_order_and_their_gap(
        mut along in prop::collection::vec(0.0..1000.0_f64, 0..60),
        gap in 1.0..40.0_f64,
    ) {
        along.sort_by(f64::total_cmp);
        let all = along.len();
        let places = along.into_iter().map(|along| Place { along, to: 0.0, text: String::new() }).collect();
        let (kept, left_out) = spread(places, [0.0, 1000.0], gap);
        prop_assert_eq!(kept.len() + left_out, all);
        if all as f64 * gap <= 1000.0 {
            prop_assert_eq!(left_out, 0);
        }
        for pair in kept.windows(2) {
            prop_assert!(pair[1].0 - pair[0].0 >= gap - 1e-9);
        }
        for (at, _) in kept {
            prop_assert!((-1e-9..=1000.0 + 1e-9).contains(&at), "{}", at);
        }
    }

    #[test]
    fn a_sheet_holds_its_slope_and_shows_its_tiles(
        width in 500.0..200_000.0_f64, height in 500.0..100_000.0_f64, tile in 100.0..500.0_f64,
    ) {
        let paper = Paper::new([0.0, 0.0, width, height], tile);
        prop_assert!(paper.left() <= 0.0 && paper.left() + paper.mm(paper.size[0]) >= width);
        prop_assert!(paper.top() >= height && paper.foot(0.0, 0.0)[1] <= 0.0);
        // On a page that fits every printer, or else large enough to read.
        prop_assert!(paper.fits_page() || tile / paper.scale >= 3.0);
        prop_assert!(tile / paper.scale >= 2.2);
    }

    #[test]
    fn a_number_is_right_to_a_twentieth(value in -1e7..1e7_f64) {
        let mut text = String::new();
        number(value, &mut text);
        prop_assert!((text.parse::<f64>().unwrap() - value).abs() < 0.0501);
        prop_assert!(text != "-0" && !text.ends_with(".0"));
    }
}
