//! The checker's own geometry against the model's: two implementations that share no code agree.
use std::sync::Arc;

use proptest::prelude::*;

use super::super::edges::{deck_flashing, distance_of_point, distance_of_rect, point_is_near, rect_is_near};
use super::super::extent::Extent;
use super::super::rafters::Wood;
use crate::geometry::{Point, Segment, SlopePoint, grid};
use crate::model::*;
use crate::roof::outline_of;
use crate::testing::{assembly, hip, inches};
use crate::units::Length;

fn point(nm: (i64, i64)) -> SlopePoint {
    SlopePoint { u: Length::from_nm(nm.0), v: Length::from_nm(nm.1) }
}

fn post(at: SlopePoint) -> Post {
    Post { name: "P".into(), assembly: Arc::new(assembly()), at, fixed: false, path: String::new() }
}

/// A place within 20 ft, in nanometres.
fn place() -> impl Strategy<Value = (i64, i64)> {
    (0..6_096_000_000_i64, 0..6_096_000_000_i64)
}

proptest! {
    #[test]
    fn setbacks(from in place(), to in place(), at in place(), by in -3..=3_i64, holds_flashing: bool) {
        let edge = Segment { from: point(from).into(), to: point(to).into() };
        prop_assume!(edge.from != edge.to);
        let post = post(point(at));
        let flashing = deck_flashing(&post);
        // Limits within three nanometres of the distance itself.
        let own = if holds_flashing { distance_of_rect(&flashing, &edge) } else { distance_of_point(post.at.into(), &edge) };
        let least = (own + Length::from_nm(by)).max(Length::ZERO);
        let setback = Setback { edge, kind: None, least, holds_flashing };
        let point_near = point_is_near(post.at.into(), &edge, grid(least));
        let near = point_near || (holds_flashing && rect_is_near(&flashing, &edge, grid(least)));
        let broken = setback.broken_by(Point::from(post.at), &post.assembly);
        prop_assert_eq!(broken.is_some(), near);
        match broken {
            Some(SetbackViolation::Post(distance)) => prop_assert!(point_near && (distance - distance_of_point(post.at.into(), &edge)).abs() <= Length::from_nm(1)),
            Some(SetbackViolation::Flashing(distance)) => prop_assert!(!point_near && (distance - own).abs() <= Length::from_nm(1)),
            None => {}
        }
    }

    #[test]
    fn rafters(lower in -500..500_i64, upper in -500..500_i64, width in 2..2000_i64, v in 0..3000_i64, off in -1..=1_i64) {
        let rafters = Rafters {
            lines: vec![RafterLine { lower: Length::from_nm(lower), upper: Length::from_nm(upper) }],
            low: Length::ZERO,
            high: Length::from_nm(width),
            width: Length::from_nm(1),
            depth: None,
            specific_gravity: None,
        };
        let v = Length::from_nm(v);
        let at = SlopePoint { u: rafters.centre(0, v) + Length::from_nm(off), v };
        prop_assert_eq!(Wood::under(&post(at), &rafters).is_some(), off == 0);
    }

    /// The hip has a chimney, and hips at 45° on both sides.
    #[test]
    fn arrays_on_a_slope(u in -240..480_i32, v in -60..240_i32, columns in 1..4_u32, rows in 1..3_u32) {
        let slope = hip();
        let array = Array {
            at: SlopePoint { u: inches(f64::from(u)), v: inches(f64::from(v)) },
            columns,
            rows,
            ..super::array("field", "0", "0", 1)
        };
        let outline = outline_of(&slope);
        prop_assert_eq!(Extent::new(&array).is_on(&outline), Containment::new(array.bounds(), &outline) == Containment::On);
        let extent = Extent::new(&array);
        prop_assert_eq!([extent.left, extent.lower, extent.right, extent.upper].map(grid), {
            let bounds = array.bounds();
            [bounds.left, bounds.lower, bounds.right, bounds.upper]
        });
    }
}
