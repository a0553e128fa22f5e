//! Battens, trim, rafters and boards, heights.
use std::sync::Arc;

use proptest::prelude::*;

use super::super::BattenPiece;
use super::*;
use crate::geometry::to_mm;
use crate::model::{Assembly, Code, DeckFlashing, Display, EdgeKind, Tile};
use crate::profile::Profile;
use crate::roof::Field;
use crate::testing::{at, flat_tile, hip, practice, three_course_assembly};

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
}

fn deck_areas(site: &Site) -> Vec<Rect> {
    let methods = methods(site);
    site.slope.posts.iter().zip(&methods).map(|(post, method)| deck_area(site, post, method)).collect()
}

#[test]
fn the_worked_example_of_battens() {
    // Two tucked posts 7 in apart, flashings from 27 to 38 in: the batten of course 2 (nose 11 3/4 in) runs from
    // 26 1/4 to 27 3/4 in, that of course 3 from 39 1/2 in.
    let (slope, practice) = (slope(&[(63.0, 31.0), (56.0, 31.0)]), practice());
    let site = Site::of(&slope, &practice);
    let pieces = battens(&site, &deck_areas(&site));
    let [piece] = &pieces[..] else { panic!("{pieces:?}") };
    assert_eq!(piece.course, 1);
    assert_eq!(piece.bounds, rect(51.0, 26.25, 68.0, 27.75));
    assert_eq!(piece.posts, ids([0, 1]));
}

#[test]
fn the_hands_clearance_cuts_no_batten() {
    // Flashing from 28 in: the batten ends at 27 3/4 in, inside the clearance of 2 in.
    let (slope, practice) = (slope(&[(56.0, 32.0)]), practice());
    let site = Site::of(&slope, &practice);
    assert!(battens(&site, &deck_areas(&site)).is_empty());
    // One that the flashing only touches stays too.
    assert!(battens(&site, &[rect(51.0, 27.75, 61.0, 38.0)]).is_empty());
}

/// Left and right ends, mm.
fn ends(pieces: &[BattenPiece]) -> Vec<[f64; 2]> {
    pieces.iter().map(|piece| [piece.bounds.left, piece.bounds.right].map(to_mm)).collect()
}

#[test]
fn a_batten_ends_at_the_rake_and_at_the_chimney() {
    let (mut slope, practice) = (slope(&[(56.0, 31.0)]), practice());
    let site = Site::of(&slope, &practice);
    let pieces = battens(&site, &[rect(-5.0, 27.0, 10.0, 30.0)]);
    assert_eq!(ends(&pieces), [[0.0, 10.0].map(mm)]);

    slope = Slope { battens: slope.battens, posts: slope.posts, ..hip() };
    let site = Site::of(&slope, &practice);
    // The chimney stands from 161 to 185 in; the batten of the course with its nose at 51 1/2 in lies at 66 in.
    let pieces = battens(&site, &[rect(150.0, 66.5, 200.0, 67.0)]);
    assert_eq!(ends(&pieces), [[150.0, 161.0].map(mm), [185.0, 200.0].map(mm)]);
}

#[test]
fn trim_counts_the_union_of_the_zones() {
    let slope = slope(&[]);
    let field = Field::of(&slope);
    // The ridge lies at 204 in; the worked example, and a zone that only touches it.
    let zones =
        [rect(40.0, 190.0, 62.0, 210.0), rect(60.0, 200.0, 80.0, 205.0), rect(90.0, 190.0, 99.0, 204.0)];
    let found = trim(&field, &zones);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].edge, EdgeKind::Ridge);
    assert!(close(found[0].length.mm(), mm(40.0)));
    // The rake from the eave's overhang up to 10 in, and an eave, which has no trim.
    let found = trim(&field, &[rect(-3.0, -9.0, 5.0, 10.0)]);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].edge, EdgeKind::Rake);
    assert!(close(found[0].length.mm(), mm(11.5)));
}

#[test]
fn trim_along_a_hip_is_a_true_length() {
    // The left hip rises at 45°: over 10 in of u it is 10 √2 in long.
    let field = Field::of(&hip());
    let found = trim(&field, &[rect(20.0, 0.0, 30.0, 100.0)]);
    assert_eq!(found[0].edge, EdgeKind::Hip);
    assert!(close(found[0].length.mm(), mm(10.0) * std::f64::consts::SQRT_2), "{found:?}");
}

/// Support of a post at `u` on rafters at 8, 32, 56… in, 1 1/2 in wide, edge distance 1/2 in.
fn support_at(u: f64) -> (crate::deck::Support, bool) {
    let (slope, practice) = (slope(&[(u, 31.0)]), practice());
    let site = Site::of(&slope, &practice);
    let post = &slope.posts[0];
    let support = support(&site, post).unwrap();
    (support, without_rafter(post, &support).is_some())
}

#[test]
fn a_post_within_reach_is_on_its_rafter() {
    let (support, finding) = support_at(56.25);
    assert_eq!((support.rafter, support.off_centre), (2, inches(0.25)));
    assert!(support.on_rafter && support.board.is_none() && !finding);
    assert!(!support_at(56.265_625).0.on_rafter);
    assert!(support_at(55.75).0.on_rafter);
}

/// A rafter at 56 in at the eave and at 58 in at the ridge 204 in above: at 51 in it is at 56 1/2 in.
#[test]
fn a_crooked_rafter_is_where_its_line_is_at_the_post() {
    let (mut slope, practice) = (slope(&[(56.75, 51.0), (56.75, 102.0), (70.0, 102.0)]), practice());
    let rafters = slope.rafters.as_mut().unwrap();
    rafters.lines[2].upper = inches(58.0);
    let site = Site::of(&slope, &practice);
    let found: Vec<_> = slope.posts.iter().map(|post| support(&site, post).unwrap()).collect();
    assert_eq!([found[0].off_centre, found[1].off_centre], [0.25, -0.25].map(inches));
    assert!(found[..2].iter().all(|support| support.on_rafter));
    // At 102 in the rafter's centre is at 57 in, the next at 80 in: 80 − 57 − 1 1/2 = 21 1/2 in are clear.
    assert_eq!(found[2].board, Some(inches(21.5)));
}

#[test]
fn a_post_beside_its_rafter_gets_a_board() {
    let (support, finding) = support_at(50.0);
    assert_eq!((support.rafter, support.off_centre), (2, inches(-6.0)));
    assert_eq!((support.board, finding), (Some(inches(22.5)), false));
    assert_eq!(support_at(44.0).0.rafter, 1); // midway: the left one
}

#[test]
fn a_post_beyond_the_rafters_gets_a_finding() {
    for u in [3.0, 445.0] {
        let (support, finding) = support_at(u);
        assert!(!support.on_rafter && support.board.is_none() && finding, "{u}");
    }
    assert_eq!(support_at(3.0).0.rafter, 0);
    assert_eq!(support_at(445.0).0.rafter, 18);
}

#[test]
fn no_rafters_no_support() {
    let (mut slope, practice) = (slope(&[(56.0, 31.0)]), practice());
    slope.rafters = None;
    let site = Site::of(&slope, &practice);
    assert!(support(&site, &slope.posts[0]).is_none());
}

#[test]
fn the_worked_example_of_heights() {
    // The head lap of courses 3 and 4 reaches from 38 1/4 to 41 1/2 in.
    let (mut slope, practice) = (slope(&[(54.0, 40.0)]), practice());
    let profile = Profile::sine(inches(2.0), inches(12.0)).unwrap();
    slope.tile = Arc::new(Tile { profile, ..flat_tile() });
    let post = &mut slope.posts[0];
    let deck_flashing =
        DeckFlashing { cone_height: Some(inches(4.75)), ..post.assembly.deck_flashing.clone() };
    post.assembly = Arc::new(Assembly { post_height: Some(inches(7.0)), deck_flashing, ..assembly() });
    let site = Site::of(&slope, &practice);
    let stack = height_stack(&site, &slope.posts[0], &openings(&site)[0]);
    assert_eq!(stack.layers, 2);
    assert_eq!([stack.batten, stack.tile], [0.75, 4.75].map(inches));
    assert_eq!(stack.free_post(), Some(inches(2.25)));
    // The cone ends where the tile does: it does not clear.
    let findings = too_low(&slope.posts[0], &stack, Display::Imperial);
    assert_eq!(findings.len(), 1);
    assert_eq!(findings[0].code, "cone-does-not-clear");
    assert_eq!(findings[0].message, "the cone of `A1` ends 0 in below the top of the tile");
}

#[test]
fn a_short_post_is_found_and_an_unknown_height_is_not() {
    let (mut slope, practice) = (slope(&[(54.0, 33.0)]), practice());
    let post = &mut slope.posts[0];
    post.assembly = Arc::new(Assembly { post_height: Some(inches(1.0)), ..assembly() });
    let site = Site::of(&slope, &practice);
    let stack = height_stack(&site, &slope.posts[0], &openings(&site)[0]);
    assert_eq!((stack.layers, stack.cone, stack.tile), (1, None, inches(1.75)));
    let findings = too_low(&slope.posts[0], &stack, Display::Metric);
    assert_eq!(findings.len(), 1);
    assert_eq!(findings[0].code, "post-does-not-clear");
    assert_eq!(findings[0].message, "the post of `A1` ends 19.05 mm below the top of the tile");
}

#[test]
fn layers_are_counted_from_nose_to_head() {
    let (slope, practice) = (slope(&[]), practice());
    let site = Site::of(&slope, &practice);
    let layers = |v: f64| site.grid.layers_at((v * 50.8e6).round() as i64);
    assert_eq!([-1.5625, -1.5, 11.6875, 11.75, 14.9375, 15.0].map(layers), [0, 1, 1, 2, 2, 1]);
}

proptest! {
    /// Each batten's pieces are apart, and together as long as the union of what the deck work takes.
    #[test]
    fn batten_pieces_are_the_union(
        sides in prop::collection::vec((0_i32..400, 10_i32..170, 1_i32..40, 1_i32..30), 0..12),
    ) {
        let (slope, practice) = (slope(&[(0.0, 0.0); 12]), practice());
        let site = Site::of(&slope, &practice);
        let areas: Vec<Rect> = sides
            .iter()
            .map(|&(u, v, w, h)| rect(f64::from(u), f64::from(v), f64::from(u + w), f64::from(v + h)))
            .collect();
        let pieces = battens(&site, &areas);
        for pair in pieces.windows(2) {
            prop_assert!(pair[0].course < pair[1].course || pair[0].bounds.right < pair[1].bounds.left);
        }
        for (course, nose) in site.grid.noses().iter().enumerate() {
            let upper = nose + (16.0 * 50.8e6) as i64;
            let lower = upper - (1.5 * 50.8e6) as i64;
            // Whole inches: count those that some deck work takes.
            let taken = (0..456).filter(|&u| {
                let inch = rect(f64::from(u), 0.0, f64::from(u) + 1.0, 0.0);
                let strip = Rect::new(inch.left, lower, inch.right, upper);
                areas.iter().any(|area| area.meets(&strip))
            });
            let of_course = |piece: &&BattenPiece| piece.course == course as u32;
            let length: f64 = pieces.iter().filter(of_course).map(|piece| to_mm(piece.bounds.right - piece.bounds.left)).sum();
            prop_assert!((length - taken.count() as f64 * 25.4).abs() < 1e-6);
        }
    }

    /// Trim is no longer than the edges, and no zone more makes it shorter.
    #[test]
    fn trim_grows_with_the_zones(
        sides in prop::collection::vec((-10_i32..360, -10_i32..150, 1_i32..60, 1_i32..40), 1..10),
    ) {
        let slope = hip();
        let field = Field::of(&slope);
        let zones: Vec<Rect> = sides
            .iter()
            .map(|&(u, v, w, h)| rect(f64::from(u), f64::from(v), f64::from(u + w), f64::from(v + h)))
            .collect();
        let total = |zones: &[Rect]| trim(&field, zones).iter().map(|trim| trim.length.mm()).sum::<f64>();
        let (few, many) = (total(&zones[1..]), total(&zones));
        prop_assert!(few <= many * (1.0 + 1e-12));
        let edges = mm(2.0 * 144.0 * std::f64::consts::SQRT_2 + 72.0);
        prop_assert!(many <= edges * (1.0 + 1e-9));
        let mut turned = zones.clone();
        turned.reverse();
        prop_assert!((total(&turned) - many).abs() <= 1e-9 * many);
    }
}

#[test]
fn every_finding_has_its_code_listed() {
    // One slope that gives all of them: posts too close together, too short, beyond rafters and lap lines.
    let mut slope = slope(&[(3.0, 190.0), (9.0, 190.0), (20.0, 190.0)]);
    let deck_flashing = DeckFlashing { cone_height: Some(inches(1.0)), ..assembly().deck_flashing };
    let short = Arc::new(Assembly { post_height: Some(inches(1.0)), deck_flashing, ..assembly() });
    slope.posts.iter_mut().for_each(|post| post.assembly = short.clone());
    slope.posts[2].assembly = Arc::new(three_course_assembly());
    slope.tile = Arc::new(Tile { held: crate::model::Held::Foam, ..flat_tile() });
    assert_eq!(slope.posts[0].at, at("3 in", "190 in"));
    let practice = practice();
    let site = Site::of(&slope, &practice);
    let methods = methods(&site);
    let taken = taken_up(&site, &zones(&site, &methods), &openings(&site), &cuts(&site));
    let post = &slope.posts[0];
    let mut found = flashings_that_meet(&slope.posts);
    found.extend(bands_that_meet(&site, &methods, &patches(&site, &methods)));
    found.extend(patches_without_lap_line(&slope.posts, &methods));
    found.extend(too_low(post, &height_stack(&site, post, &openings(&site)[0]), Display::Imperial));
    found.extend(support(&site, post).and_then(|support| without_rafter(post, &support)));
    found.extend(set_tiles(&site, &taken, "/slopes/0"));
    let mut codes: Vec<Code> = found.iter().map(|finding| finding.code).collect();
    codes.sort_unstable_by_key(|code| code.as_str());
    codes.dedup();
    assert_eq!(codes, CODES);
}
