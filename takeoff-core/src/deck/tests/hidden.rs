//! Tiles that an array hides.
use std::sync::Arc;

use proptest::prelude::*;

use super::*;
use crate::geometry::SlopePoint;
use crate::model::{Array, Held, Pieces, Stock, Tile};
use crate::roof::Part;
use crate::testing::{flat_tile, hip, practice};

/// One module, in inches.
fn array(left: f64, lower: f64, width: f64, height: f64) -> Array {
    Array {
        name: "field".into(),
        at: SlopePoint { u: inches(left), v: inches(lower) },
        module_width: inches(width),
        module_height: inches(height),
        columns: 1,
        rows: 1,
        column_gap: Length::ZERO,
        row_gap: Length::ZERO,
        shift: Default::default(),
        rails: None,
    }
}

fn hidden_on(slope: &Slope, part: Part) -> u64 {
    let practice = practice();
    let site = Site::of(slope, &practice);
    let methods = methods(&site);
    let taken = taken_up(&site, &zones(&site, &methods), &openings(&site), &cuts(&site));
    hidden(&site, &taken, part)
}

fn hidden_below(arrays: Vec<Array>) -> u64 {
    hidden_on(&Slope { arrays, ..slope(&[]) }, Part::Tile)
}

/// Faces from 48 to 60, 72, 84, 96 in and from 25 to 38 1/4, 51 1/2, 64 3/4 in.
#[test]
fn faces_that_lie_below_are_hidden() {
    assert_eq!(hidden_below(vec![array(48.0, 25.0, 50.0, 30.0)]), 8);
    assert_eq!(hidden_below(vec![array(48.0, 25.0, 48.0, 26.5)]), 8, "to the last nanometre");
    assert_eq!(hidden_below(vec![array(48.0, 25.0, 47.99, 26.5)]), 6);
    assert_eq!(hidden_below(vec![array(48.0, 25.01, 48.0, 26.5)]), 4);
    // Beside each other, and a face that both cover half.
    assert_eq!(hidden_below(vec![array(48.0, 25.0, 18.0, 26.5), array(66.0, 25.0, 30.0, 26.5)]), 2 + 4);
    assert_eq!(hidden_below(vec![]), 0);
}

/// The post of the worked zone takes up or loosens C3-5 to C3-7 and C4-3 to C4-7; of columns 5 to 8, two are left.
#[test]
fn tiles_that_are_handled_are_no_spares() {
    let slope = Slope { arrays: vec![array(48.0, 25.0, 50.0, 30.0)], ..slope(&[(54.0, 33.0)]) };
    assert_eq!(hidden_on(&slope, Part::Tile), 2);
}

#[test]
fn set_tiles_do_not_come_up_whole() {
    let mut slope = Slope { arrays: vec![array(48.0, 25.0, 50.0, 30.0)], ..slope(&[]) };
    slope.tile = Arc::new(Tile { held: Held::Foam, ..flat_tile() });
    assert_eq!(hidden_on(&slope, Part::Tile), 0);
}

/// Pans show from 51 1/2 to 56 1/2 in, covers lie from 56 1/2 to 63 1/2 in, and so on every 12 in.
#[test]
fn pans_and_covers_are_hidden_apart() {
    let mut slope = Slope { arrays: vec![array(50.0, 25.0, 26.0, 14.0)], ..slope(&[]) };
    let pieces = Pieces::PanAndCover {
        pan_width: inches(9.0),
        cover_width: inches(7.0),
        pans: Stock::default(),
        covers: Stock::default(),
    };
    slope.tile = Arc::new(Tile { pieces, ..flat_tile() });
    // Pans of columns 5 and 6; the cover between them, and the one from 68 1/2 to 75 1/2 in.
    assert_eq!((hidden_on(&slope, Part::Pan), hidden_on(&slope, Part::Cover)), (2, 2));
}

proptest! {
    /// Counted one by one over all tiles of the roof, in another way: whole, every corner of the face below an array.
    #[test]
    fn as_counted_one_by_one(
        left in -40.0..300.0f64, lower in -20.0..140.0f64, width in 1.0..200.0f64, height in 1.0..120.0f64,
    ) {
        let roof = Slope { arrays: vec![array(left, lower, width, height)], ..hip() };
        let practice = practice();
        let site = Site::of(&roof, &practice);
        let below = |p: &crate::geometry::Point| roof.arrays[0].covers(*p);
        let whole = |footprint: &Rect| {
            let pieces = crate::geometry::clip(site.field.polygon(), footprint);
            let area: f64 = pieces.iter().map(crate::geometry::Polygon::area_mm2).sum();
            let [left, lower, right, upper] = footprint.mm();
            (area - (right - left) * (upper - lower)).abs() < 1e-6
        };
        let all = site.grid.over(site.field.bounds().grown(1));
        let want = all.filter(|(tile, footprint)| {
            whole(footprint) && site.grid.face(*tile).corners().iter().all(below)
        });
        prop_assert_eq!(hidden(&site, &[], Part::Tile), want.count() as u64);
    }
}
