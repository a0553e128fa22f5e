//! Three-course work: bands, what they take, what they meet.
use std::sync::Arc;

use proptest::prelude::*;

use super::super::{DeckMethod, ThreeCourse};
use super::*;
use crate::model::{LapLines, Practice};
use crate::testing::{len, practice, three_course_assembly};
use crate::units::Volume;

/// The slope of these tests, the posts at `which` places with three-course work.
fn mixed(posts: &[(f64, f64)], which: impl Fn(usize) -> bool) -> Slope {
    let mut slope = slope(posts);
    let assembly = Arc::new(three_course_assembly());
    let asked = slope.posts.iter_mut().enumerate().filter(|(i, _)| which(*i));
    asked.for_each(|(_, post)| post.assembly = assembly.clone());
    slope
}

fn work(slope: &Slope, practice: &Practice) -> Vec<ThreeCourse> {
    let site = Site::of(slope, practice);
    three_course(&site, &methods(&site))
}

fn near(got: f64, want: f64, printed_to: f64) {
    assert!((got - want).abs() <= printed_to, "{got} is not {want}");
}

fn gallons(mm3: f64) -> f64 {
    mm3 / Volume::parse("1 gal").unwrap().mm3()
}

const SQUARE_INCH: f64 = 645.16;
const CUBIC_INCH: f64 = 16_387.064;

#[test]
fn the_worked_example_of_the_bands() {
    let (slope, practice) = (mixed(&[(56.0, 37.0)], |_| true), practice());
    let site = Site::of(&slope, &practice);
    let method = methods(&site)[0];
    let post = &slope.posts[0];
    assert_eq!(
        bands(post, practice.three_course.mesh_width),
        [rect(49.0, 33.0, 53.0, 42.0), rect(49.0, 42.0, 63.0, 46.0), rect(59.0, 33.0, 63.0, 42.0)]
    );
    assert_eq!((method, own_patch(&site, post, &method)), (Method::ThreeCourse, None));
    assert_eq!(deck_area(&site, post, &method), rect(49.0, 33.0, 63.0, 46.0));
    assert_eq!(work_zone(&site, post, &method), rect(47.0, 31.0, 65.0, 48.0));
    let deck = deck_work(&site, post, &method, None);
    assert_eq!((deck.method, deck.patch), (Method::ThreeCourse, None));

    let [work] = &three_course(&site, &[method])[..] else { panic!("one post") };
    assert_eq!(work.post, PostId::new(0));
    near(work.area.mm2() / SQUARE_INCH, 128.0, 1e-9);
    near(work.mesh.mm() / 25.4, 40.0, 1e-9);
    near(work.cement.mm3() / CUBIC_INCH, 32.0, 1e-9);
}

/// A film of 1/8 in on 100 sq ft is 1800 in³ and a US gallon 231 in³ (NIST Handbook 44, Appendix C): 7.792 gal, 12.83
/// sq ft a gallon; half of that for 1/16 in. Handbooks print about 8 gal a square (common practice).
#[test]
fn cement_of_a_square() {
    let square = 100.0 * 304.8 * 304.8;
    for (film, per_square, coverage) in [("1/8 in", 7.792, 12.83), ("1/16 in", 3.896, 25.67)] {
        let needed = gallons(cement_mm3(square, len(film), 1));
        near(needed, per_square, 5e-4);
        near(100.0 / needed, coverage, 5e-3);
    }
}

/// A foot of mesh, one coat of 1/8 in: `12 w / 8` in³. Two coats on mesh 6 in wide take 9.97 fl oz, about a cartridge
/// of 10.1 fl oz.
#[test]
fn cement_of_a_foot_of_mesh() {
    for (width, coats, per_foot) in [("4 in", 1, 0.02597), ("6 in", 1, 0.03896), ("6 in", 2, 0.07792)] {
        near(gallons(cement_mm3(len(width).mm() * 304.8, len("1/8 in"), coats)), per_foot, 5e-6);
    }
    near(128.0 * gallons(cement_mm3(len("6 in").mm() * 304.8, len("1/8 in"), 2)), 9.97, 5e-3);
}

/// 12 × 12 in, two coats of 1/8 in: 36 in³, 0.1558 gal, 19.95 fl oz.
#[test]
fn cement_of_a_square_foot() {
    let cement = cement_mm3(304.8 * 304.8, len("1/8 in"), 2);
    near(cement / CUBIC_INCH, 36.0, 1e-9);
    near(gallons(cement), 0.1558, 5e-5);
    near(128.0 * gallons(cement), 19.95, 5e-3);
}

/// Bands of width `w` all round a square of side `s` cover `(s + 2w)² − s² = 4(sw + w²)`, 240 in² for 4 and 6 in, two
/// coats of 1/8 in 60 in³. They are centred on the edges of a square of `s + w`; open below they are `w (s + w)` less.
#[test]
fn bands_round_a_square_with_the_lower_side_left_open() {
    for (side, width, closed) in [(4.0, 6.0, 240.0), (7.0, 4.0, 176.0), (9.5, 3.0, 150.0)] {
        let flange = inches(side + width);
        let open = bands_mm2(flange, flange, inches(width)) / SQUARE_INCH;
        near(open + width * (side + width), closed, 1e-9);
    }
    near(cement_mm3(240.0 * SQUARE_INCH, len("1/8 in"), 2) / CUBIC_INCH, 60.0, 1e-9);
}

#[test]
fn no_lap_line_governs_and_none_is_missed() {
    // Tucked at 31 in, patched at 39 in, above the last lap line at 180 in; brittle sheets make no difference.
    let (mut slope, practice) = (mixed(&[(56.0, 31.0), (56.0, 39.0), (56.0, 180.0)], |_| true), practice());
    slope.lap_lines = LapLines::Measured(vec![inches(34.0)]);
    let site = Site::of(&slope, &practice);
    let methods = methods(&site);
    assert_eq!(methods, [Method::ThreeCourse; 3]);
    assert!(patches(&site, &methods).patches.is_empty());
    assert!(patches_without_lap_line(&slope.posts, &methods).is_empty());
}

fn meeting(slope: &Slope) -> Vec<String> {
    let practice = practice();
    let site = Site::of(slope, &practice);
    let methods = methods(&site);
    let found = bands_that_meet(&site, &methods, &patches(&site, &methods));
    found.into_iter().map(|finding| finding.message).collect()
}

#[test]
fn bands_that_meet_are_found_once_a_post() {
    // Flange and bands are 14 in wide: posts 14 in apart touch, 13 in apart meet; flanges 9 in apart have their own
    // finding.
    assert!(meeting(&mixed(&[(40.0, 31.0), (54.0, 31.0)], |_| true)).is_empty());
    assert!(meeting(&mixed(&[(40.0, 31.0), (49.0, 31.0)], |_| true)).is_empty());
    assert_eq!(
        meeting(&mixed(&[(40.0, 31.0), (53.0, 31.0), (66.0, 31.0)], |_| true)),
        [
            "the three-course bands of `A1` meet the bands of `A2`",
            "the three-course bands of `A2` meet the bands of `A1` and 1 more",
            "the three-course bands of `A3` meet the bands of `A2`",
        ]
    );
    // A tucked neighbour's flange is 10 in wide: they meet when less than 12 in apart.
    assert!(meeting(&mixed(&[(40.0, 31.0), (52.0, 31.0)], |i| i == 0)).is_empty());
    assert_eq!(
        meeting(&mixed(&[(40.0, 31.0), (51.0, 31.0)], |i| i == 0)),
        ["the three-course bands of `A1` meet the deck flashing of `A2`"]
    );
}

#[test]
fn a_neighbours_patch_over_the_bands_is_found() {
    // The patch over a post at 39 in runs from 39 to 72 in up the slope and 9 in to each side.
    let slope = mixed(&[(56.0, 39.0), (60.0, 60.0)], |i| i == 1);
    assert_eq!(meeting(&slope), ["the three-course bands of `A2` meet patch `P1`"]);
    let practice = practice();
    let site = Site::of(&slope, &practice);
    let patches = patches(&site, &methods(&site)).patches;
    assert_eq!(patches[0].posts, ids([0]));
    assert_eq!(patches[0].cut_round, ids([1]));
    // Upper edge of the bands: v + 7 + 2 in. At 30 in they touch the patch's lower edge, at 68 in along the eave the
    // flange's side.
    assert!(meeting(&mixed(&[(56.0, 39.0), (68.0, 30.0)], |i| i == 1)).is_empty());
    assert_eq!(meeting(&mixed(&[(56.0, 39.0), (68.0, 30.0625)], |i| i == 1)).len(), 1);
}

fn some_posts() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((40_i32..3200, 20_i32..1580), 1..20)
        .prop_map(|posts| posts.iter().map(|&(u, v)| (f64::from(u) / 8.0, f64::from(v) / 8.0)).collect())
}

/// Whole square nanometres and more, exactly.
fn area(rect: &Rect) -> i128 {
    i128::from(rect.right - rect.left) * i128::from(rect.upper - rect.lower)
}

proptest! {
    #[test]
    fn the_bands_are_what_the_formulas_say(
        width in 1_i64..40_000, down in 1_i64..20_000, up in 1_i64..20_000, mesh in 1_i64..20_000,
    ) {
        let [width, down, up, mesh] = [width, down, up, mesh].map(|hundredths| Length::from_nm(10_000 * hundredths));
        prop_assume!(mesh <= width && mesh <= down + up + down + up);
        let mut slope = mixed(&[(200.0, 100.0)], |_| true);
        let mut assembly = three_course_assembly();
        (assembly.deck_flashing.width, assembly.deck_flashing.down, assembly.deck_flashing.up) = (width, down, up);
        slope.posts[0].assembly = Arc::new(assembly);
        let mut practice = practice();
        practice.three_course.mesh_width = mesh;

        let post = &slope.posts[0];
        let [left, top, right] = bands(post, mesh);
        let own = [left, top, right];
        for (a, b) in [(0, 1), (1, 2), (0, 2)] {
            prop_assert!(!own[a].meets(&own[b]));
        }
        let sum: i128 = own.iter().map(area).sum();
        let work = &work(&slope, &practice)[0];
        // A grid step is half a nanometre.
        let mm2 = sum as f64 / 4e12;
        prop_assert!((work.area.mm2() - mm2).abs() <= 1e-9 * mm2, "{} {mm2}", work.area.mm2());
        let strips = (top.right - top.left) + 2 * (top.upper - left.lower);
        prop_assert!((work.mesh.mm() - strips as f64 / 2e6).abs() <= 1e-9 * work.mesh.mm());

        // Flange and bands fill their bounding rectangle.
        let site = Site::of(&slope, &practice);
        let whole = deck_area(&site, post, &Method::ThreeCourse);
        let flange = flashing(post);
        let common: i128 = own.iter().filter(|band| band.meets(&flange)).map(|band| area(&band.intersection(&flange))).sum();
        prop_assert_eq!(area(&flange) + sum - common, area(&whole));
    }

    #[test]
    fn every_post_is_dried_in_one_way(posts in some_posts(), every in 1_usize..4) {
        let (slope, practice) = (mixed(&posts, |i| i % every == 0), practice());
        let site = Site::of(&slope, &practice);
        let methods = methods(&site);
        let Patches { patches, of_post } = patches(&site, &methods);
        let worked = three_course(&site, &methods);
        let worked: Vec<usize> = worked.iter().map(|work| work.post.place()).collect();
        prop_assert_eq!(worked, (0..slope.posts.len()).step_by(every).collect::<Vec<_>>());
        for (i, method) in methods.iter().enumerate() {
            prop_assert_eq!(*method == Method::ThreeCourse, i % every == 0);
            prop_assert_eq!(of_post[i].is_some(), matches!(method.kind(), DeckMethod::Patched));
        }

        // The others' patches are those that they have without them.
        let others: Vec<(f64, f64)> = posts.iter().enumerate().filter(|(i, _)| i % every != 0).map(|(_, &post)| post).collect();
        let alone = self::slope(&others);
        let site = Site::of(&alone, &practice);
        let without = super::patches(&site, &self::methods(&site)).patches;
        prop_assert_eq!(patches.len(), without.len());
        for (with, without) in patches.iter().zip(&without) {
            prop_assert_eq!(with.bounds, without.bounds);
        }
    }

    #[test]
    fn the_order_of_posts_changes_no_meeting(posts in some_posts(), every in 1_usize..4) {
        let codes = |posts: &[(f64, f64)], asked: &dyn Fn(usize) -> bool| {
            let (slope, practice) = (mixed(posts, asked), practice());
            let site = Site::of(&slope, &practice);
            let methods = methods(&site);
            bands_that_meet(&site, &methods, &patches(&site, &methods)).len()
        };
        let turned: Vec<_> = posts.iter().copied().rev().collect();
        let last = posts.len() - 1;
        prop_assert_eq!(codes(&posts, &|i| i % every == 0), codes(&turned, &|i| (last - i) % every == 0));
    }
}
