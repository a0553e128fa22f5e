use std::f64::consts::PI;

use proptest::prelude::*;

use super::sweep::swept;
use super::{CutKind, TileSide, *};
use crate::geometry::{Ellipse, Point, Polygon, Rect, grid};
use crate::num::math;
use crate::roof::Site;
use crate::testing::{assembly, at, gable, len, practice};
use crate::units::Length;

const TILE: Rect = Rect::new(0, 0, 660_400_000, 838_200_000); // 13 × 16 1/2 in

fn judged(footprint: Footprint, shape: Shape, web: i64) -> Option<Judged> {
    let tile = crate::roof::TileId { course: 0, column: 0, part: crate::roof::Part::Tile };
    footprint.meets(&shape).then(|| {
        let breach = footprint.breach(&shape, web);
        Judged { tile, footprint, shape, breach }
    })
}

/// Area of a shape within a rectangle.
fn within(shape: Shape, rect: Rect) -> f64 {
    let polygon = Polygon::new(vec![rect.corners().to_vec()]);
    let tile = crate::roof::TileId { course: 0, column: 0, part: crate::roof::Part::Tile };
    let footprint = Footprint::Edge { polygon, number: None };
    swept(&Judged { tile, footprint, shape, breach: Breach::Other }).area_mm2
}

fn on_whole(ellipse: Ellipse) -> Option<Judged> {
    judged(Footprint::Whole(TILE), Shape::Ellipse(ellipse), grid(len("1 in")))
}

fn ellipse() -> impl Strategy<Value = Ellipse> {
    let axis = 10_000_000i64..150_000_000;
    (-160_000_000i64..820_000_000, -160_000_000i64..1_000_000_000, axis.clone(), axis)
        .prop_map(|(u, v, a, b)| Ellipse { centre: Point::new(u, v), a, b })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// The closed forms for a whole tile agree with the slabs.
    #[test]
    fn closed_forms_agree_with_slabs(ellipse in ellipse(), round in any::<bool>()) {
        let ellipse = if round { Ellipse { b: ellipse.a, ..ellipse } } else { ellipse };
        if let Some(judged) = on_whole(ellipse) {
            let closed = removed(&judged);
            let slabs = swept(&judged);
            let opening = PI * ellipse.a as f64 * ellipse.b as f64 / 4e12;
            prop_assert!((closed.area_mm2 - slabs.area_mm2).abs() <= 1e-9 * opening, "{:?} {closed:?} {slabs:?}", judged.kind());
            prop_assert!((closed.path_mm - slabs.path_mm).abs() <= 1e-6 * closed.path_mm.max(1.0), "{:?} {closed:?} {slabs:?}", judged.kind());
        }
    }

    /// Turned by quarter turns and mirrored, a cut keeps its kind, area and path.
    #[test]
    fn turned_and_mirrored(ellipse in ellipse()) {
        let Some(plain) = on_whole(ellipse) else { return Ok(()) };
        let Removed { area_mm2, path_mm } = removed(&plain);
        let flip = |p: Point| Point::new(TILE.right - p.u, p.v);
        let turn = |p: Point| Point::new(TILE.upper - p.v, p.u);
        let turned_tile = Rect::new(0, 0, TILE.upper, TILE.right);
        let cases = [
            (Ellipse { centre: flip(ellipse.centre), ..ellipse }, TILE),
            (Ellipse { centre: turn(ellipse.centre), a: ellipse.b, b: ellipse.a }, turned_tile),
        ];
        for (moved, tile) in cases {
            let other = judged(Footprint::Whole(tile), Shape::Ellipse(moved), grid(len("1 in"))).unwrap();
            prop_assert_eq!(other.kind(), plain.kind());
            let other = removed(&other);
            prop_assert!((other.area_mm2 - area_mm2).abs() < 1e-9 * (area_mm2 + 1.0));
            prop_assert!((other.path_mm - path_mm).abs() < 1e-6 * (path_mm + 1.0));
        }
    }

    /// The rectangle round several openings: areas by hand.
    #[test]
    fn rectangles(left in 0i64..600_000_000, lower in 0i64..800_000_000, w in 1_000_000i64..200_000_000, h in 1_000_000i64..200_000_000) {
        let rect = Rect::new(left, lower, left + w, lower + h);
        let web = grid(len("1 in"));
        let Some(judged) = judged(Footprint::Whole(TILE), Shape::Rect(rect), web) else { return Ok(()) };
        let grown = rect.grown(web);
        let breached = [grown.left < 0, grown.right > TILE.right, grown.lower < 0, grown.upper > TILE.upper];
        let extended = Rect::new(
            if breached[0] { 0 } else { rect.left },
            if breached[2] { 0 } else { rect.lower },
            if breached[1] { TILE.right } else { rect.right },
            if breached[3] { TILE.upper } else { rect.upper },
        );
        let kind = judged.kind();
        let area = match kind {
            CutKind::Severed => rect.intersection(&TILE),
            _ => extended,
        };
        let expected = (area.right - area.left) as f64 * (area.upper - area.lower) as f64 / 4e12;
        prop_assert!((removed(&judged).area_mm2 - expected).abs() < 1e-9 * expected, "{kind:?}");
    }

    /// Over the visible faces of a roof, the parts of an opening add up to the opening; over the footprints, to
    /// the integral of the number of layers.
    #[test]
    fn faces_add_up(u in 200_000_000i64..22_000_000_000, v in 200_000_000i64..9_000_000_000, a in 20_000_000i64..120_000_000, b in 20_000_000i64..120_000_000) {
        let (slope, practice) = (gable(), practice());
        let site = Site::of(&slope, &practice);
        let ellipse = Ellipse { centre: Point::new(u, v), a, b };
        let within = |rect: Rect| within(Shape::Ellipse(ellipse), rect);
        let tiles: Vec<_> = site.grid.over(ellipse.bounds()).collect();
        let faces: f64 = tiles.iter().map(|(tile, _)| within(site.grid.face(*tile))).sum();
        let opening = PI * a as f64 * b as f64 / 4e12;
        prop_assert!((faces - opening).abs() < 1e-9 * opening, "{faces} {opening}");
        // Layers change at noses, heads and joints only: cut the bounds there and count footprints over each cell.
        let mut us: Vec<i64> = tiles.iter().flat_map(|(_, r)| [r.left, r.right]).collect();
        let mut vs: Vec<i64> = tiles.iter().flat_map(|(_, r)| [r.lower, r.upper]).collect();
        us.sort_unstable(); us.dedup(); vs.sort_unstable(); vs.dedup();
        let mut layers = 0.0;
        for u in us.windows(2) {
            for v in vs.windows(2) {
                let cell = Rect::new(u[0], v[0], u[1], v[1]);
                layers += within(cell) * tiles.iter().filter(|(_, r)| r.meets(&cell)).count() as f64;
            }
        }
        let footprints: f64 = tiles.iter().map(|(_, rect)| within(*rect)).sum();
        prop_assert!((footprints - layers).abs() < 1e-8 * opening);
    }
}

/// A disc of radius 2.5, cut by a straight edge at height `h`: areas of the circular segment as tabulated in
/// handbooks of mensuration (values common to published tables, four digits).
#[test]
fn circular_segments() {
    let table = [
        (0.5, 1.022),
        (1.0, 2.796),
        (1.5, 4.954),
        (2.0, 7.334),
        (2.5, 9.817),
        (3.0, 12.301),
        (3.5, 14.681),
        (4.0, 16.839),
        (4.5, 18.613),
        (5.0, 19.635),
    ];
    let tile = Rect::new(-200_000_000, 0, 200_000_000, 400_000_000);
    for (h, area) in table {
        // In millimetres, with the centre `h − r` above the nose.
        let centre = Point::new(0, ((h - 2.5) * 2e6) as i64);
        let shape = Shape::Ellipse(Ellipse { centre, a: 5_000_000, b: 5_000_000 });
        let within = within(shape, tile);
        assert!((within - area).abs() < 6e-4, "h {h}: {within}");
    }
}

#[test]
fn kinds_on_one_tile() {
    let inch = 50_800_000;
    let disc = |u: f64, v: f64| {
        let centre = Point::new((u * inch as f64) as i64, (v * inch as f64) as i64);
        on_whole(Ellipse { centre, a: inch, b: inch }).map(|j| (j.kind(), j.open_to(&TILE)))
    };
    use CutKind::*;
    use TileSide::*;
    assert_eq!(disc(6.5, 8.0), Some((Hole, vec![])));
    // Radius 1 in and web 1 in: at 2 in the grown disc touches the nose, which is not meeting it.
    assert_eq!(disc(6.5, 2.0), Some((Hole, vec![])));
    assert_eq!(disc(6.5, 1.999), Some((Notch, vec![Nose])));
    assert_eq!(disc(6.5, -0.999), Some((Notch, vec![Nose])));
    assert_eq!(disc(6.5, -1.0), None);
    assert_eq!(disc(6.5, 16.0), Some((Notch, vec![Head])));
    assert_eq!(disc(1.0, 8.0), Some((Notch, vec![Left])));
    assert_eq!(disc(12.5, 8.0), Some((Notch, vec![Right])));
    assert_eq!(disc(1.0, 1.0), Some((Corner, vec![Left, Nose])));
    let wide = Ellipse { centre: Point::new(13 * inch / 2, 8 * inch), a: 6 * inch, b: inch };
    assert_eq!(on_whole(wide).map(|j| j.kind()), Some(Severed));
}

/// A disc of radius 2.5 on a joint falls half in each tile, on a corner of four a quarter in each.
#[test]
fn on_joint_and_corner() {
    let disc = Ellipse { centre: Point::new(0, 0), a: 5_000_000, b: 5_000_000 };
    let at = |rect: Rect| within(Shape::Ellipse(disc), rect);
    let big = 100_000_000;
    assert!((at(Rect::new(0, -big, big, big)) - 9.817_477).abs() < 1e-6);
    assert!((at(Rect::new(0, 0, big, big)) - 4.908_739).abs() < 1e-6);
}

/// A ray first leaves the tile at a vent hole: what lies beyond the vent stays.
#[test]
fn a_notch_stops_at_a_vent() {
    let mm = 2_000_000;
    let outer = Rect::new(0, 0, 300 * mm, 400 * mm).corners().to_vec();
    let mut vent = Rect::new(100 * mm, 100 * mm, 200 * mm, 200 * mm).corners().to_vec();
    vent.reverse();
    let footprint = Footprint::Edge { polygon: Polygon::new(vec![outer, vent]), number: None };
    let disc = Ellipse { centre: Point::new(150 * mm, 230 * mm), a: 20 * mm, b: 20 * mm };
    let judged = judged(footprint, Shape::Ellipse(disc), grid(len("25 mm"))).unwrap();
    assert_eq!(judged.kind(), CutKind::Notch);
    let expected = PI * 400.0 / 2.0 + 40.0 * 30.0;
    let gone = removed(&judged);
    assert!((gone.area_mm2 - expected).abs() < 1e-9 * expected, "{gone:?} {expected}");
    assert!((gone.path_mm - (PI * 20.0 + 60.0)).abs() < 1e-9);
}

#[test]
fn plumb_opening() {
    let mut slope = gable();
    slope.pitch = crate::units::Pitch::parse("12:12").unwrap();
    let mut plumb = assembly();
    plumb.axis = crate::model::Axis::Plumb;
    plumb.lap_surface_height = Some(len("1 1/2 in"));
    let opening = opening_of(&plumb, &slope);
    // ρ = 1 in; along v 1·√2 + 1 (tile 1 in thick); up 1 1/2 in.
    assert_eq!(opening.ellipse.a, 50_800_000);
    assert_eq!(opening.ellipse.b, (50_800_000f64 * 2f64.sqrt() + 50_800_000.0).round() as i64);
    assert_eq!(opening.ellipse.centre.v, grid(len("1 1/2 in")));
    // Along the post: ρ 1 in, β 1 + sin 45° = 1.7071 in; √(2 / 2.7071) − 3/4 = 0.10953 in.
    assert!((opening.least_clearance_mm - 25.4 * 0.109_53).abs() < 1e-3);
}

/// The least clearance of a plumb post, found by going round: the post's circle where it leaves the tile's outer face
/// against the opening, both seen along the post.
#[test]
fn plumb_clearance_by_going_round() {
    let mut slope = gable();
    for (pitch, clearance) in
        [("12:12", "1/8 in"), ("8:12", "3/8 in"), ("3:12", "1/4 in"), ("24:12", "1/2 in")]
    {
        slope.pitch = crate::units::Pitch::parse(pitch).unwrap();
        let mut plumb = assembly();
        plumb.axis = crate::model::Axis::Plumb;
        plumb.clearance = len(clearance);
        let opening = opening_of(&plumb, &slope);
        let (rho, beta) =
            (opening.ellipse.a as f64 / 2e6, opening.ellipse.b as f64 / 2e6 * slope.pitch.cos());
        let off = 25.4 * slope.pitch.sin();
        let around = (0..200_000).map(|i| {
            let angle = f64::from(i) / 200_000.0 * PI / 2.0;
            let (sine, cosine) = (math::sin(angle), math::cos(angle));
            let support = ((rho * cosine).powi(2) + (beta * sine).powi(2)).sqrt();
            support - 25.4 * 0.75 - off * sine
        });
        let least = around.fold(f64::INFINITY, f64::min);
        assert!((opening.least_clearance_mm - least).abs() < 1e-6, "{pitch} {clearance}");
        assert_eq!(least < 0.0, clearance == "1/8 in", "an eighth is too tight at 45°");
    }
}

#[test]
fn hole_saws() {
    let mut with_saws = assembly();
    with_saws.hole_saws = vec![len("1 7/8 in"), len("2 1/8 in"), len("2 1/2 in")];
    let opening = opening_of(&with_saws, &gable());
    assert_eq!(opening.ellipse.a, len("2 1/8 in").nm());
    assert!((opening.least_clearance_mm - 25.4 * 5.0 / 16.0).abs() < 1e-9);
}

#[test]
fn near_openings_are_one() {
    let (slope, practice) = (gable(), practice());
    let site = Site::of(&slope, &practice);
    let opening = opening_of(&assembly(), &slope);
    let put = |places: &[(&str, &str)]| {
        let openings: Vec<Ellipse> = places.iter().map(|(u, v)| opening.at(Point::from(at(u, v)))).collect();
        cuts_of(&site, &openings)
    };
    // Course 3 shows from 25 to 38 1/4 in; its joints are at whole feet.
    let apart = put(&[("51 in", "32 in"), ("54 in", "32 in")]);
    assert_eq!(apart.iter().map(|c| c.posts.len()).collect::<Vec<_>>(), [1, 1], "a web of 1 in stays");
    let near = put(&[("51 in", "32 in"), ("53 15/16 in", "32 in")]);
    assert_eq!(near.len(), 1);
    assert_eq!(near[0].posts.as_slice(), [0, 1]);
    assert!(matches!(near[0].judged.shape, Shape::Rect(_)));
    let rect = near[0].judged.shape.bounds();
    assert_eq!(rect.right - rect.left, grid(len("4 15/16 in")));
}

#[test]
fn rays_of_a_slanted_edge() {
    // A triangle cut from a tile by a 45° hip; a disc whose centre lies on the hip takes half a disc and nothing
    // but that, since every ray along the hip's normal leaves at once.
    let mm = 2_000_000;
    let ring = vec![Point::new(0, 0), Point::new(300 * mm, 0), Point::new(0, 300 * mm)];
    let footprint = Footprint::Edge { polygon: Polygon::new(vec![ring]), number: None };
    let disc = Ellipse { centre: Point::new(150 * mm, 150 * mm), a: 20 * mm, b: 20 * mm };
    let judged = judged(footprint, Shape::Ellipse(disc), grid(Length::from_nm(25_400_000))).unwrap();
    assert_eq!((judged.kind(), judged.open_to(&TILE)), (CutKind::Notch, vec![TileSide::FieldEdge]));
    let gone = removed(&judged);
    assert!((gone.area_mm2 - PI * 200.0).abs() < 1e-9 && (gone.path_mm - PI * 20.0).abs() < 1e-9, "{gone:?}");
}

/// Merging as the rule is written: of all pairs the first that is nearer becomes one, from the start each time.
fn merged_pair_by_pair(openings: &[Ellipse], web: i64) -> Vec<(Vec<usize>, Rect)> {
    let alone = openings.iter().enumerate();
    let mut groups: Vec<(Vec<usize>, Rect)> = alone.map(|(i, opening)| (vec![i], opening.bounds())).collect();
    let near = |groups: &[(Vec<usize>, Rect)]| {
        let mut pairs = (0..groups.len()).flat_map(|i| (i + 1..groups.len()).map(move |j| (i, j)));
        pairs.find(|&(i, j)| groups[i].1.nearer_than(&groups[j].1, web))
    };
    while let Some((i, j)) = near(&groups) {
        let (members, rect) = groups.remove(j);
        groups[i].0.extend(members);
        groups[i].0.sort_unstable();
        groups[i].1 = groups[i].1.union(&rect);
    }
    groups
}

fn openings() -> impl Strategy<Value = Vec<Ellipse>> {
    let opening = (-60i64..60, -60i64..60, 1i64..9, 1i64..9).prop_map(|(u, v, a, b)| Ellipse {
        centre: Point::new(u, v),
        a,
        b,
    });
    prop::collection::vec(opening, 0..24)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    /// Merged by look-ups as pair by pair, whatever the order of the openings.
    #[test]
    fn merged_as_pair_by_pair(openings in openings(), web in 0i64..12, turn in 0usize..24) {
        let together = |openings: &[Ellipse]| -> Vec<(Vec<usize>, Rect)> {
            let groups = judge_together(openings, web);
            groups.into_iter().map(|(members, shape)| (members, shape.bounds())).collect()
        };
        prop_assert_eq!(together(&openings), merged_pair_by_pair(&openings, web));
        let rects = |groups: Vec<(Vec<usize>, Rect)>| {
            let mut rects: Vec<Rect> = groups.into_iter().map(|group| group.1).collect();
            rects.sort_unstable();
            rects
        };
        let mut turned = openings.clone();
        turned.rotate_left(turn % openings.len().max(1));
        prop_assert_eq!(rects(together(&turned)), rects(together(&openings)));
    }

    /// What is left without each of the rectangles is what is left when the others alone are merged.
    #[test]
    fn merged_without_each_one(openings in openings(), web in 0i64..12) {
        let rects: Vec<Rect> = openings.iter().map(Ellipse::bounds).collect();
        for (left_out, without) in merged_without_each(&rects, web).into_iter().enumerate() {
            let mut others = openings.clone();
            others.remove(left_out);
            let mut expected: Vec<Rect> = merged_pair_by_pair(&others, web).into_iter().map(|group| group.1).collect();
            expected.sort_unstable();
            prop_assert_eq!(without.to_vec(), expected);
        }
    }
}

/// A triangle cut from a tile by a hip at 45°, with a disc in line with the joint on its left, centred on the corner where the two
/// meet: an eighth of the disc goes, along an eighth of its circle. The hip's and the joint's ends there are a rounding apart.
#[test]
fn a_cut_in_line_with_a_joint_beside_a_hip_is_sawn_once() {
    let mm = 2_000_000;
    let ring = vec![Point::new(0, 0), Point::new(176 * mm, 0), Point::new(0, 176 * mm)];
    let footprint = Footprint::Edge { polygon: Polygon::new(vec![ring]), number: None };
    let disc = Ellipse { centre: Point::new(0, 176 * mm), a: 33 * mm / 2, b: 33 * mm / 2 };
    let judged = judged(footprint, Shape::Ellipse(disc), grid(len("1 in"))).unwrap();
    assert_eq!(
        (judged.kind(), judged.open_to(&TILE)),
        (CutKind::Corner, vec![TileSide::Left, TileSide::FieldEdge])
    );
    let gone = removed(&judged);
    assert!((gone.path_mm - PI * 16.5 / 4.0).abs() < 1e-9, "{gone:?}");
    assert!((gone.area_mm2 - PI * 16.5 * 16.5 / 8.0).abs() < 1e-9 * PI * 16.5 * 16.5, "{gone:?}");
}
