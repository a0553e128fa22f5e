//! Handled tiles from the cache of repeating patterns against a count tile by tile.
use crate::geometry::SlopePoint;
use std::sync::Arc;

use proptest::prelude::*;

use crate::cuts::{Shape, judge, opening_of};
use crate::deck::{Method, work_zone};
use crate::geometry::{Point, grid};
use crate::layout::post_cost::{CutTile, TileCounter};
use crate::model::*;
use crate::roof::Site;
use crate::testing::*;

/// A two-piece tile on the gable.
fn barrel() -> Slope {
    let pieces = Pieces::PanAndCover {
        pan_width: len("8 in"),
        cover_width: len("7 in"),
        pans: Stock::default(),
        covers: Stock::default(),
    };
    Slope { tile: Arc::new(Tile { pieces, ..flat_tile() }), ..gable() }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn cached_counts_equal_counts_tile_by_tile(kind in 0..4usize, u in 0.0..1.0f64, v in 0.0..1.0f64, posts in 1..4usize) {
        let slope = [gable(), hip(), barrel(), Slope { bond: vec![len("0"), len("4 in"), len("8 in")], ..gable() }][kind].clone();
        let practice = practice();
        let site = Site::of(&slope, &practice);
        let counter = TileCounter::new(&site);
        let assembly = Arc::new(assembly());
        let bounds = site.field.bounds();
        // Several places, so that later ones use the cache.
        for i in 0..posts {
            let along = |low: i64, high: i64, share: f64| low + 2 * (((high - low) / 2) as f64 * share) as i64;
            let step = i as i64 * grid(len("12 in"));
            let at = Point::new(along(bounds.left, bounds.right, u) + step, along(bounds.lower, bounds.upper, v));
            if !site.field.polygon().contains(at) {
                continue;
            }
            let opening = opening_of(&assembly, &slope).at(at);
            let mut cut: Vec<CutTile> = Vec::new();
            judge(&site.grid, &site.field, Shape::Ellipse(opening), grid(practice.least_web), |judged| {
                cut.push((judged.tile, judged.kind()));
            });
            let point = SlopePoint { u: crate::units::Length::from_nm(at.u / 2), v: crate::units::Length::from_nm(at.v / 2) };
            let post = Post { name: String::new(), assembly: assembly.clone(), at: point, fixed: false, path: String::new() };
            let zone = work_zone(&site, &post, &Method::at(&site, &assembly, at));
            let counted = counter.count(&site, &zone, &opening, &cut);
            prop_assert_eq!(counted, counter.count_tile_by_tile(&site, &zone, &opening));
        }
    }
}
