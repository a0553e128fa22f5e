use geo::line_measures::{Distance as _, Euclidean};
use proptest::prelude::*;

use super::{to_point, to_rect};
use crate::geometry::{Point, Rect, Segment};

proptest! {
    /// Distances to an edge against geo's, in millimetres.
    #[test]
    fn distances_are_those_of_geo(
        edge in prop::array::uniform4(-20_000_000_000_i64..20_000_000_000),
        at in prop::array::uniform2(-20_000_000_000_i64..20_000_000_000),
        size in prop::array::uniform2(1_i64..4_000_000_000),
    ) {
        let segment = Segment { from: Point::new(edge[0], edge[1]), to: Point::new(edge[2], edge[3]) };
        let coord = |u: i64, v: i64| geo::Coord { x: u as f64 / 2e6, y: v as f64 / 2e6 };
        let line = geo::Line::new(coord(edge[0], edge[1]), coord(edge[2], edge[3]));
        let theirs = Euclidean.distance(&geo::Point(coord(at[0], at[1])), &line);
        prop_assert!((to_point(&segment, Point::new(at[0], at[1])).length().mm() - theirs).abs() < 2e-6);

        let rect = Rect::new(at[0], at[1], at[0] + size[0], at[1] + size[1]);
        let box_ = geo::Rect::new(coord(rect.left, rect.lower), coord(rect.right, rect.upper)).to_polygon();
        let theirs = Euclidean.distance(&line, &box_);
        prop_assert!((to_rect(&segment, &rect).length().mm() - theirs).abs() < 2e-6);
    }
}
