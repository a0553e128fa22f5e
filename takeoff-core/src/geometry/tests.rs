use geo::{Area, Validation};
use proptest::prelude::*;

use super::polygon::{ring_doubled_area, simplified};
use super::*;

/// A star-shaped ring round the origin: any radii at ascending angles.
fn ring(radii: &[i64], turn: f64) -> Vec<Point> {
    let n = radii.len() as f64;
    let points = radii.iter().enumerate().map(|(i, &r)| {
        let angle = turn + std::f64::consts::TAU * i as f64 / n;
        Point::new(2 * (r as f64 * math::cos(angle)) as i64, 2 * (r as f64 * math::sin(angle)) as i64)
    });
    points.collect()
}

fn field() -> impl Strategy<Value = Polygon> {
    let outer = prop::collection::vec(2_000i64..6_000, 3..12);
    let hole = prop::option::of(prop::collection::vec(100i64..1_000, 3..7));
    (outer, hole, 0.0..1.0f64).prop_filter_map("not a polygon", |(outer, hole, turn)| {
        let mut rings = vec![simplified(ring(&outer, turn))?];
        if let Some(hole) = hole {
            let mut hole = simplified(ring(&hole, turn / 2.0))?;
            hole.reverse();
            rings.push(hole);
        }
        (ring_doubled_area(&rings[0]) > 0).then(|| Polygon::new(rings))
    })
}

fn as_geo(polygon: &Polygon) -> geo::Polygon<f64> {
    let mut rings = polygon.rings().iter().map(|ring| {
        ring.iter().map(|p| geo::coord! { x: p.u as f64, y: p.v as f64 }).collect::<geo::LineString<f64>>()
    });
    geo::Polygon::new(rings.next().unwrap(), rings.collect())
}

proptest! {
    /// Cut along a grid, the pieces of a polygon add up to it, whatever its corners do to the grid's lines.
    #[test]
    fn pieces_add_up(field in field(), step in 500i64..5_000, u0 in -9i64..9, v0 in -9i64..9) {
        let bounds = field.bounds();
        let lines = |from: i64, to: i64, shift: i64| {
            let first = from - 2 * step + 2 * shift;
            (0..).map(move |i| first + 2 * step * i).take_while(move |&x| x < to + 2 * step).collect::<Vec<_>>()
        };
        let mut pieces = vec![];
        for u in lines(bounds.left, bounds.right, u0) {
            for v in lines(bounds.lower, bounds.upper, v0) {
                pieces.extend(clip(&field, &Rect::new(u, v, u + 2 * step, v + 2 * step)));
            }
        }
        let total: f64 = pieces.iter().map(Polygon::area_mm2).sum();
        // Each new vertex moves by at most a nanometre along a line no longer than the field.
        let slack = pieces.len() as f64 * 40.0 * 30_000e-6 * 1e-6;
        prop_assert!((total - field.area_mm2()).abs() < slack, "{total} {}", field.area_mm2());
    }

    /// Each piece is a valid polygon, lies in the rectangle, and has the area that geo's clipping finds.
    #[test]
    fn pieces_are_what_geo_finds(field in field(), u in -6_000i64..4_000, v in -6_000i64..4_000, w in 1i64..9_000, h in 1i64..9_000) {
        let rect = Rect::new(2 * u, 2 * v, 2 * (u + w), 2 * (v + h));
        let pieces = clip(&field, &rect);
        for piece in &pieces {
            prop_assert!(ring_doubled_area(&piece.rings()[0]) > 0);
            let bounds = piece.bounds();
            prop_assert_eq!(bounds.intersection(&rect), bounds);
        }
        use geo::BooleanOps;
        let other = geo::Rect::new(
            geo::coord! { x: rect.left as f64, y: rect.lower as f64 },
            geo::coord! { x: rect.right as f64, y: rect.upper as f64 },
        );
        let expected = as_geo(&field).intersection(&other.to_polygon()).unsigned_area();
        let own: f64 = pieces.iter().map(|p| as_geo(p).unsigned_area()).sum();
        // Each new vertex moves by at most half a nanometre, one grid step, along the rectangle's boundary.
        let slack = 2.0 * (rect.right - rect.left + rect.upper - rect.lower) as f64 + 1e-4 * own;
        prop_assert!((own - expected).abs() < slack, "{own} {expected}");
    }

    /// A rectangle apart from the field gives nothing; one around it gives it back.
    #[test]
    fn clip_at_the_extremes(field in field()) {
        let around = field.bounds().grown(2);
        let whole = clip(&field, &around);
        prop_assert_eq!(whole.len(), 1);
        prop_assert_eq!(whole[0].area_mm2(), field.area_mm2());
        let apart = Rect::new(around.right, around.lower, around.right + 10, around.upper);
        prop_assert!(clip(&field, &apart).is_empty());
        prop_assert!(as_geo(&whole[0]).is_valid());
    }

    /// An ellipse meets a segment when the scaled distance says so, unless they nearly touch.
    #[test]
    fn ellipse_and_segment(a in 1i64..1_000_000, b in 1i64..1_000_000, p in any::<[i32; 4]>()) {
        let ellipse = Ellipse { centre: Point::new(0, 0), a, b };
        let [u0, v0, u1, v1] = p.map(|x| i64::from(x) / 1000);
        let segment = Segment { from: Point::new(u0, v0), to: Point::new(u1, v1) };
        let scaled = |p: Point| (p.u as f64 / a as f64, p.v as f64 / b as f64);
        let ((x0, y0), (x1, y1)) = (scaled(segment.from), scaled(segment.to));
        let (dx, dy) = (x1 - x0, y1 - y0);
        let t = if dx == 0.0 && dy == 0.0 { 0.0 } else { (-(x0 * dx + y0 * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0) };
        let distance = math::hypot(x0 + t * dx, y0 + t * dy);
        prop_assume!((distance - 1.0).abs() > 1e-9);
        prop_assert_eq!(ellipse.meets_segment(&segment), distance < 1.0);
        let reversed = Segment { from: segment.to, to: segment.from };
        prop_assert_eq!(ellipse.meets_segment(&segment), ellipse.meets_segment(&reversed));
    }

    /// A rectangle meets a segment when a walk along it finds a point inside.
    #[test]
    fn rect_and_segment(w in 1i64..40, h in 1i64..40, p in prop::array::uniform4(-50i64..90)) {
        let rect = Rect::new(0, 0, w, h);
        let segment = Segment { from: Point::new(p[0], p[1]), to: Point::new(p[2], p[3]) };
        // Clip the parameter to each open side, exactly, with fractions over a common denominator.
        let mut low = (0i128, 1i128);
        let mut high = (1i128, 1i128);
        let mut inside = true;
        for (start, end, least, most) in [(p[0], p[2], 0, w), (p[1], p[3], 0, h)] {
            let step = i128::from(end - start);
            if step == 0 {
                inside &= least < start && start < most;
                continue;
            }
            let (mut t0, mut t1) = ((i128::from(least - start), step), (i128::from(most - start), step));
            if step < 0 {
                (t0, t1) = ((-t1.0, -step), (-t0.0, -step));
            }
            if t0.0 * low.1 >= low.0 * t0.1 { low = t0; }
            if t1.0 * high.1 <= high.0 * t1.1 { high = t1; }
        }
        // The segment is closed, the rectangle open: a bound from the rectangle excludes its own end, so a
        // single common point counts only where it is an end of the segment inside.
        let ends = [segment.from, segment.to].iter().any(|p| 0 < p.u && p.u < w && 0 < p.v && p.v < h);
        let expected = inside && (ends || low.0 * high.1 < high.0 * low.1);
        prop_assert_eq!(rect.meets_segment(&segment), expected);
    }
}

#[test]
fn touching_is_not_meeting() {
    let rect = Rect::new(0, 0, 10, 10);
    assert!(!rect.meets(&Rect::new(10, 0, 20, 10)));
    let ellipse = Ellipse { centre: Point::new(15, 5), a: 5, b: 3 };
    assert!(!ellipse.meets_rect(&rect));
    assert!(Ellipse { a: 6, ..ellipse }.meets_rect(&rect));
    // A slanted edge x + y = 0 and a circle about (5, 5)·k of radius exactly its distance √50·k has no whole
    // radius; 3-4-5 does: the line 3u + 4v = 0 lies 5 from (3, 4).
    let touching = Ellipse { centre: Point::new(3, 4), a: 5, b: 5 };
    let line = Segment { from: Point::new(-40, 30), to: Point::new(40, -30) };
    assert!(!touching.meets_segment(&line));
    assert!(Ellipse { a: 6, b: 6, ..touching }.meets_segment(&line));
}

#[test]
fn a_line_through_a_corner_leaves_two_pieces() {
    // A W whose middle corner touches the line from above: above the line it is one piece, cut at its feet.
    let w = Polygon::new(vec![vec![
        Point::new(0, 0),
        Point::new(40, 0),
        Point::new(40, 40),
        Point::new(20, 20),
        Point::new(0, 40),
    ]]);
    assert_eq!(clip(&w, &Rect::new(0, 20, 40, 40)).len(), 2);
    assert_eq!(clip(&w, &Rect::new(0, 18, 40, 40)).len(), 1);
    assert_eq!(clip(&w, &Rect::new(0, 0, 40, 20)).len(), 1);
}

#[test]
fn a_hole_on_the_line_opens_the_piece() {
    let square = vec![Point::new(0, 0), Point::new(40, 0), Point::new(40, 40), Point::new(0, 40)];
    let hole = vec![Point::new(10, 10), Point::new(10, 30), Point::new(30, 30), Point::new(30, 10)];
    let polygon = Polygon::new(vec![square, hole]);
    let lower = clip(&polygon, &Rect::new(0, 0, 40, 20));
    assert_eq!((lower.len(), lower[0].rings().len(), lower[0].rings()[0].len()), (1, 1, 8));
    let left_of_hole = clip(&polygon, &Rect::new(0, 12, 40, 28));
    assert_eq!(left_of_hole.len(), 2);
    assert_eq!(clip(&polygon, &Rect::new(-2, -2, 42, 42))[0].rings().len(), 2);
    assert!(clip(&polygon, &Rect::new(10, 10, 30, 30)).is_empty());
}

/// A rake that leans by 10 µm on 5 m: at 1.0002503 m it is at 2000.5006 nm, and it passes 3001 nm at 1.5005 m. Followed from the
/// first of the two, rounded to 2001 nm, it would pass 0.2 mm lower.
#[test]
fn an_edge_that_is_cut_twice_is_rounded_once() {
    let nm = |u: i64, v: i64| Point::new(2 * u, 2 * v);
    let (m, out) = (1_000_000_000, 10_000);
    let field = Polygon::new(vec![vec![nm(0, 0), nm(4 * m, 0), nm(4 * m, 5 * m), nm(out, 5 * m)]]);
    let [lower_left, upper_right] = [nm(3001, 1_000_250_300), nm(3 * m, 4 * m)];
    let rect = Rect::new(lower_left.u, lower_left.v, upper_right.u, upper_right.v);
    let pieces = clip(&field, &rect);
    let [piece] = &pieces[..] else { panic!("{pieces:?}") };
    let mut corners = piece.rings()[0].clone();
    corners.sort_unstable();
    let sides = [lower_left, nm(3001, 1_500_500_000), nm(8000, 4 * m), nm(3 * m, 1_000_250_300), upper_right];
    assert_eq!(corners, sides);
}
