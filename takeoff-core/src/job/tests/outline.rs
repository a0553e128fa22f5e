//! Outlines: simple, counter-clockwise, without straight corners.
use geo::Validation;
use proptest::prelude::*;
use serde_json::{Value, json};

use super::{codes, good, read, with};
use crate::geometry::{Point, Polygon, SlopePoint};
use crate::model::Job;
use crate::model::{EdgeKind, Slope};

/// The good job with another outline, in whole feet, and no posts.
fn job(outline: &[(i64, i64)], edges: &[&str]) -> Value {
    let corners: Vec<Value> =
        outline.iter().map(|(u, v)| json!([format!("{u} ft"), format!("{v} ft")])).collect();
    with(
        good(),
        &json!({
            "/slopes/0/outline": corners, "/slopes/0/edges": edges, "/slopes/0/posts": [],
            "/slopes/0/perimeter": null, "/slopes/0/setbacks": null, "/slopes/0/rafters": null,
            "/slopes/0/overhang": "0", "/slopes/0/courses": { "noses": ["0"] },
        }),
    )
}

fn slope(job: Result<Job, crate::model::Problems>) -> Slope {
    job.unwrap_or_else(|problems| panic!("{problems:#?}")).slopes.remove(0)
}

fn feet(corner: &SlopePoint) -> (i64, i64) {
    let foot = crate::units::Length::FOOT.nm();
    (corner.u.nm() / foot, corner.v.nm() / foot)
}

/// Each edge with what it is, in no order.
type Edge = ((i64, i64), (i64, i64), Option<EdgeKind>);

fn edges(slope: &Slope) -> Vec<Edge> {
    let count = slope.outline.len();
    let mut edges: Vec<_> = (0..count)
        .map(|i| (feet(&slope.outline[i]), feet(&slope.outline[(i + 1) % count]), slope.edges[i]))
        .collect();
    edges.sort();
    edges
}

const HIP: [(i64, i64); 5] = [(0, 0), (30, 0), (30, 10), (15, 20), (0, 10)];
const HIP_EDGES: [&str; 5] = ["eave", "rake", "hip", "valley", "wall"];

#[test]
fn a_clockwise_outline_is_turned_round_with_its_edges() {
    let clockwise: Vec<(i64, i64)> = [HIP[0]].into_iter().chain(HIP[1..].iter().rev().copied()).collect();
    let back: Vec<&str> = HIP_EDGES.iter().rev().copied().collect();
    let (one, other) = (slope(read(&job(&HIP, &HIP_EDGES))), slope(read(&job(&clockwise, &back))));
    assert_eq!(one.outline, other.outline);
    assert_eq!(one.edges, other.edges);
    assert_eq!(one.outline.iter().map(feet).collect::<Vec<_>>(), HIP);
}

#[test]
fn straight_corners_go_unless_the_edge_changes_there() {
    let outline = [(0, 0), (10, 0), (30, 0), (30, 20), (20, 20), (0, 20)];
    let read = slope(read(&job(&outline, &["eave", "eave", "rake", "ridge", "wall", "rake"])));
    assert_eq!(
        read.outline.iter().map(feet).collect::<Vec<_>>(),
        [(0, 0), (30, 0), (30, 20), (20, 20), (0, 20)]
    );
    let kinds = [EdgeKind::Eave, EdgeKind::Rake, EdgeKind::Ridge, EdgeKind::Wall, EdgeKind::Rake];
    assert_eq!(read.edges, kinds.map(Some));
}

#[test]
fn holes_are_turned_clockwise() {
    let hole = |corners: Value| json!({ "/slopes/0/holes": [{ "outline": corners }] });
    let round = json!([["10 ft", "10 ft"], ["12 ft", "10 ft"], ["12 ft", "12 ft"], ["10 ft", "12 ft"]]);
    let other_way = json!([["10 ft", "10 ft"], ["10 ft", "12 ft"], ["12 ft", "12 ft"], ["12 ft", "10 ft"]]);
    for corners in [round, other_way] {
        let slope = slope(read(&with(good(), &hole(corners))));
        let ring: Vec<Point> = slope.holes[0].iter().map(|&corner| corner.into()).collect();
        assert_eq!(ring.len(), 4);
        // The interior of the slope is on the left of each edge of the hole.
        assert!(ring[0].cross(ring[1], ring[2]) < 0);
        assert!((Polygon::new(vec![ring]).area_mm2() + 609.6 * 609.6).abs() < 1e-6);
    }
}

#[test]
fn what_is_not_simple_says_how() {
    for (outline, part) in [
        (&[(0, 0), (9, 0), (0, 9), (9, 9)][..], "edges 2 and 4 of the outline cross or touch"),
        (&[(0, 0), (9, 0), (9, 9), (0, 9), (0, 0)], "corners 1 and 5 of the outline are one point"),
        (&[(0, 0), (9, 0), (9, 9), (5, 0), (0, 9)], "edges 1 and 3 of the outline cross or touch"),
        (&[(0, 0), (9, 0), (9, 9), (9, 5), (0, 9)], "turns back on itself at corner 3"),
        (&[(0, 0), (4, 4), (8, 0), (8, 8), (4, 4), (0, 8)], "corners 2 and 5 of the outline are one point"),
    ] {
        let problems = read(&job(outline, &vec!["rake"; outline.len()])).unwrap_err();
        assert_eq!(codes(&problems), [("crossing-outline", "/slopes/0/outline")]);
        assert!(problems[0].message.contains(part), "{}", problems[0].message);
    }
    let closed = read(&job(&[(0, 0), (9, 0), (9, 9), (0, 0)], &["rake"; 4])).unwrap_err();
    assert!(closed[0].help.starts_with("do not repeat the first corner"));
}

#[test]
fn many_corners_are_refused_in_little_time() {
    let ring = |count: i64| -> Vec<(i64, i64)> {
        (0..count).map(|i| (i, i % 2)).chain((0..count).rev().map(|i| (i, 2 + i % 2))).collect()
    };
    let many = ring(1_001);
    let problems = read(&job(&many, &vec!["rake"; many.len()])).unwrap_err();
    assert_eq!(codes(&problems), [("too-many", "/slopes/0/outline")]);
    let few = ring(500);
    assert_eq!(slope(read(&job(&few, &vec!["rake"; few.len()]))).outline.len(), 1_000);
}

proptest! {
    /// Where an outline begins and which way round it goes makes no difference.
    #[test]
    fn beginning_and_direction_make_no_difference(start in 0_usize..5, backwards: bool) {
        let (mut outline, mut kinds) = (HIP.to_vec(), HIP_EDGES.to_vec());
        outline.rotate_left(start);
        kinds.rotate_left(start);
        if backwards {
            outline.reverse();
            kinds.reverse();
            kinds.rotate_left(1);
        }
        let (plain, turned) = (slope(read(&job(&HIP, &HIP_EDGES))), slope(read(&job(&outline, &kinds))));
        prop_assert_eq!(feet(&turned.outline[0]), outline[0]);
        prop_assert_eq!(edges(&plain), edges(&turned));
    }

    /// geo as the oracle, on a coarse grid, where most polygons are not simple: what it calls invalid is refused, and
    /// what is taken it calls valid. (It does not look for corners that touch, nor for spikes.)
    #[test]
    fn a_crossing_outline_is_never_taken(corners in prop::collection::vec((0_i64..5, 0_i64..5), 3..8)) {
        let line: geo::LineString = corners.iter().map(|&(u, v)| geo::Coord { x: u as f64, y: v as f64 }).collect();
        let valid = geo::Polygon::new(line, Vec::new()).is_valid();
        let taken = read(&job(&corners, &vec!["wall"; corners.len()]));
        prop_assert!(valid || taken.is_err());
        if let Err(problems) = taken {
            let known = ["crossing-outline", "no-area"];
            prop_assert!(problems.iter().all(|problem| known.contains(&problem.code.as_str())), "{:#?}", problems);
        }
    }

    /// Star-shaped outlines are simple, whatever their corners: they are all taken.
    #[test]
    fn a_star_shaped_outline_is_taken(radii in prop::collection::vec(2_i64..40, 8)) {
        let ways = [(1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1), (0, -1), (1, -1)];
        let corners: Vec<(i64, i64)> = ways.iter().zip(&radii).map(|((u, v), r)| (u * r, v * r)).collect();
        let slope = slope(read(&job(&corners, &["wall"; 8])));
        let doubled: i64 = (0..8).map(|i| {
            let ((a, b), (c, d)) = (corners[i], corners[(i + 1) % 8]);
            a * d - b * c
        }).sum();
        let ring = slope.outline.iter().map(|&corner| corner.into()).collect();
        let area = Polygon::new(vec![ring]).area_mm2();
        prop_assert!((area - doubled as f64 / 2.0 * 304.8 * 304.8).abs() <= 1e-9 * area);
    }
}
