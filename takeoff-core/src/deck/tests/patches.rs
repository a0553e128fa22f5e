//! Patches: size, pieces, links, what lies over what.
use std::sync::Arc;

use proptest::prelude::*;

use super::super::Patch;
use super::*;
use crate::geometry::grid;
use crate::testing::practice;

fn patches_at(posts: &[(f64, f64)]) -> Vec<Patch> {
    let (slope, practice) = (slope(posts), practice());
    let site = Site::of(&slope, &practice);
    patches(&site, &methods(&site)).patches
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
}

/// Square inches.
fn sq_in(mm2: f64) -> f64 {
    mm2 / (25.4 * 25.4)
}

#[test]
fn a_patch_by_itself() {
    // 18 in wide, from 39 in to 68 + 4 in: 33 in tall; perimeter 102 in, 26 staples 4 in apart.
    let patches = patches_at(&[(56.0, 39.0)]);
    let [patch] = &patches[..] else { panic!("{patches:?}") };
    assert_eq!(patch.bounds, rect(47.0, 39.0, 65.0, 72.0));
    assert_eq!(patch.pieces, 1);
    assert!(close(sq_in(patch.area.mm2()), 18.0 * 33.0));
    assert_eq!(patch.perimeter(), inches(102.0));
    assert_eq!(patch.staples, 26);
    assert_eq!(patch.half_round_at, ids([0]));
    assert!(patch.round_at.is_empty());
}

#[test]
fn a_patch_as_tall_as_the_sheet_is_wide_is_one_piece() {
    let (mut slope, practice) = (slope(&[(56.0, 40.0)]), practice());
    slope.lap_lines = crate::model::LapLines::Measured(vec![inches(34.0), inches(72.0)]);
    let site = Site::of(&slope, &practice);
    let one = &patches(&site, &methods(&site)).patches[0];
    assert_eq!(one.height(), inches(36.0));
    assert_eq!(one.pieces, 1);

    // A sixteenth more: two pieces, and their lap of 2 in counts.
    slope.lap_lines = crate::model::LapLines::Measured(vec![inches(34.0), inches(72.0625)]);
    let site = Site::of(&slope, &practice);
    let two = &patches(&site, &methods(&site)).patches[0];
    assert_eq!(two.pieces, 2);
    assert!(close(sq_in(two.area.mm2()), 18.0 * (36.0625 + 2.0)));
}

#[test]
fn three_pieces_are_what_two_laps_call_for() {
    // From 20 in to the lap line at 100 in and 4 in under: 84 in; (84 − 2)/34 = 2.4, so 3 pieces.
    let (mut slope, practice) = (slope(&[(56.0, 20.0)]), practice());
    slope.lap_lines = crate::model::LapLines::Measured(vec![inches(100.0)]);
    let site = Site::of(&slope, &practice);
    let patch = &patches(&site, &methods(&site)).patches[0];
    assert_eq!(patch.pieces, 3);
    assert!(close(sq_in(patch.area.mm2()), 18.0 * (84.0 + 2.0 * 2.0)));
}

#[test]
fn posts_side_by_side_share_a_patch() {
    // Own rectangles 18 in wide meet when the posts are less than 18 in apart; cones may differ by 1 + 1 in.
    let linked = patches_at(&[(56.0, 39.0), (70.0, 41.0), (84.0, 43.0)]);
    let [patch] = &linked[..] else { panic!("{linked:?}") };
    assert_eq!(patch.posts, ids([0, 1, 2]));
    assert_eq!(patch.bounds, rect(47.0, 39.0, 93.0, 72.0));
    assert_eq!(patch.half_round_at, ids([0]));
    assert_eq!(patch.round_at, ids([1, 2]));
    assert!(patch.lies_over.is_empty() && patch.cut_round.is_empty());
}

#[test]
fn posts_that_only_touch_or_stand_too_high_are_not_linked() {
    assert_eq!(patches_at(&[(56.0, 39.0), (74.0, 39.0)]).len(), 2); // 18 in apart: the patches touch
    assert_eq!(patches_at(&[(56.0, 39.0), (70.0, 41.0625)]).len(), 2); // a sixteenth too high
    assert_eq!(patches_at(&[(56.0, 39.0), (70.0, 73.0)]).len(), 2); // another lap line
}

#[test]
fn the_higher_patch_lies_over_and_the_lower_is_cut_round_its_post() {
    let patches = patches_at(&[(60.0, 45.0), (56.0, 39.0)]);
    assert_eq!(patches[0].lies_over, [PatchId::new(1)]);
    assert!(patches[1].lies_over.is_empty());
    assert_eq!(patches[1].cut_round, ids([0]));
    assert!(patches[0].cut_round.is_empty());
}

#[test]
fn a_patch_is_cut_round_a_tucked_post_in_it() {
    // A post at 65 in is tucked (the lap line at 68 in is 3 in above) and stands in the patch up to 72 in.
    let patches = patches_at(&[(56.0, 39.0), (60.0, 65.0)]);
    assert_eq!(patches.len(), 1);
    assert_eq!(patches[0].posts, ids([0]));
    assert_eq!(patches[0].cut_round, ids([1]));
}

#[test]
fn the_larger_cone_decides_a_link() {
    let (mut slope, practice) = (slope(&[(56.0, 39.0), (70.0, 42.0)]), practice());
    let mut large = (*slope.posts[1].assembly).clone();
    large.deck_flashing.cone_diameter = inches(4.0);
    slope.posts[1].assembly = Arc::new(large);
    let site = Site::of(&slope, &practice);
    let patches = patches(&site, &methods(&site)).patches;
    // 3 in apart in v: 2 in radius + 1 in drain.
    assert_eq!(patches.len(), 1);
}

fn some_posts(least: usize) -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((40_i32..3200, 20_i32..1580), least..30)
        .prop_map(|posts| posts.iter().map(|&(u, v)| (f64::from(u) / 8.0, f64::from(v) / 8.0)).collect())
}

/// Bounds and counts of the patches, in some order.
fn measures(patches: &[Patch]) -> Vec<(Rect, u64, u64, usize)> {
    let measure = |patch: &Patch| (patch.bounds, patch.pieces, patch.staples, patch.posts.len());
    let mut measures: Vec<_> = patches.iter().map(measure).collect();
    measures.sort_unstable();
    measures
}

proptest! {
    #[test]
    fn every_patched_post_is_under_one_patch(posts in some_posts(0)) {
        let (slope, practice) = (slope(&posts), practice());
        let site = Site::of(&slope, &practice);
        let methods = methods(&site);
        let Patches { patches, of_post } = patches(&site, &methods);
        for (((place, post), method), of_post) in slope.posts.iter().enumerate().zip(&methods).zip(of_post) {
            let own = own_patch(&site, post, method);
            prop_assert_eq!(own.is_some(), of_post.is_some());
            if let (Some(own), Some(patch)) = (own, of_post) {
                let patch = &patches[patch.place()];
                prop_assert!(patch.posts.contains(&PostId::new(place)));
                prop_assert_eq!(patch.bounds.union(&own), patch.bounds);
                prop_assert_eq!(patch.lap_line.map(grid), method.line());
            }
        }
        let under: usize = patches.iter().map(|patch| patch.posts.len()).sum();
        prop_assert_eq!(under, methods.iter().filter(|method| own_patch_kind(method)).count());
        for patch in &patches {
            prop_assert_eq!(patch.half_round_at.len() + patch.round_at.len(), patch.posts.len());
            prop_assert!(!patch.half_round_at.is_empty());
        }
    }

    /// Chains of links against every two posts tried, with cones of several sizes and posts close together.
    #[test]
    fn chains_are_what_links_make(posts in prop::collection::vec((0_i32..640, 280_i32..420, 1_u8..4), 0..40)) {
        let places: Vec<(f64, f64)> =
            posts.iter().map(|&(u, v, _)| (40.0 + f64::from(u) / 8.0, f64::from(v) / 8.0)).collect();
        let (mut slope, practice) = (slope(&places), practice());
        for (post, &(.., size)) in slope.posts.iter_mut().zip(&posts) {
            let mut assembly = (*post.assembly).clone();
            assembly.deck_flashing.cone_diameter = inches(f64::from(size));
            post.assembly = Arc::new(assembly);
        }
        let site = Site::of(&slope, &practice);
        let methods = methods(&site);
        let linked = |a: usize, b: usize| {
            let own = [a, b].map(|i| own_patch(&site, &slope.posts[i], &methods[i]));
            let [Some(own_a), Some(own_b)] = own else { return false };
            let [post_a, post_b] = [a, b].map(|i| &slope.posts[i]);
            let apart = (post_a.at.v - post_b.at.v).mm().abs();
            let cone = post_a.assembly.deck_flashing.cone_diameter.max(post_b.assembly.deck_flashing.cone_diameter);
            let line = methods[a].line();
            line.is_some() && line == methods[b].line() && own_a.meets(&own_b) && apart <= cone.mm() / 2.0 + mm(1.0) + 1e-9
        };
        let n = posts.len();
        let mut chain: Vec<usize> = (0..n).collect();
        while let Some((a, b)) = (0..n).flat_map(|a| (0..n).map(move |b| (a, b))).find(|&(a, b)| chain[b] < chain[a] && linked(a, b)) {
            chain[a] = chain[b];
        }
        let of_post = patches(&site, &methods).of_post;
        for a in 0..n {
            for b in 0..n {
                if let (Some(patch_a), Some(patch_b)) = (of_post[a], of_post[b]) {
                    prop_assert_eq!(patch_a == patch_b, chain[a] == chain[b]);
                }
            }
        }
    }

    #[test]
    fn the_order_of_posts_changes_no_patch(posts in some_posts(0), seed in any::<u64>()) {
        let mut shuffled = posts.clone();
        let mut state = seed;
        for i in (1..shuffled.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            shuffled.swap(i, (state >> 33) as usize % (i + 1));
        }
        prop_assert_eq!(measures(&patches_at(&posts)), measures(&patches_at(&shuffled)));
    }

    #[test]
    fn mirrored_posts_have_mirrored_patches(posts in some_posts(0)) {
        let mirrored: Vec<(f64, f64)> = posts.iter().map(|&(u, v)| (456.0 - u, v)).collect();
        let flipped: Vec<_> = measures(&patches_at(&mirrored))
            .into_iter()
            .map(|(Rect { left, lower, right, upper }, ..)| {
                let width = grid(inches(456.0));
                Rect::new(width - right, lower, width - left, upper)
            })
            .collect();
        let mut expected: Vec<_> = measures(&patches_at(&posts)).into_iter().map(|m| m.0).collect();
        let mut flipped = flipped;
        flipped.sort_unstable();
        expected.sort_unstable();
        prop_assert_eq!(flipped, expected);
    }

    #[test]
    fn a_far_post_adds_its_own_patch_only(posts in some_posts(0)) {
        let near: Vec<(f64, f64)> = posts.iter().map(|&(u, v)| (u.min(300.0), v)).collect();
        let mut more = near.clone();
        more.push((440.0, 39.0));
        let (before, after) = (measures(&patches_at(&near)), measures(&patches_at(&more)));
        prop_assert_eq!(after.len(), before.len() + 1);
        prop_assert!(before.iter().all(|patch| after.contains(patch)));
    }
}

fn own_patch_kind(method: &Method) -> bool {
    !matches!(method, Method::Tucked { .. })
}
