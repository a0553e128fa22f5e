//! Flashings, own patches, work zones and flashings that meet.
use proptest::prelude::*;

use super::*;
use crate::geometry::grid;
use crate::testing::practice;

#[test]
fn a_tucked_post_works_under_its_flashing_and_the_hands_round_it() {
    let (slope, practice) = (slope(&[(56.0, 31.0)]), practice());
    let site = Site::of(&slope, &practice);
    let method = methods(&site)[0];
    assert_eq!(flashing(&slope.posts[0]), rect(51.0, 27.0, 61.0, 38.0));
    assert_eq!(own_patch(&site, &slope.posts[0], &method), None);
    assert_eq!(work_zone(&site, &slope.posts[0], &method), rect(49.0, 25.0, 63.0, 40.0));
    // The lap line at 34 in lies 3 in above the post's point, clear of the cone (1 in).
    let work = deck_work(&site, &slope.posts[0], &method, None);
    assert_eq!(work.method, Method::Tucked { line: grid(inches(34.0)), around_cone: false });
}

#[test]
fn a_patched_post_works_up_to_its_lap_line() {
    // The worked example of `own_patch`: with the point at 39 in the lap line at 34 in is below the flashing's
    // drained edge (39 − 4 + 1 = 36 in), and the next one is at 68 in.
    let (slope, practice) = (slope(&[(56.0, 39.0)]), practice());
    let site = Site::of(&slope, &practice);
    let method = methods(&site)[0];
    assert_eq!(own_patch(&site, &slope.posts[0], &method), Some(rect(47.0, 39.0, 65.0, 72.0)));
    assert_eq!(deck_area(&site, &slope.posts[0], &method), rect(47.0, 35.0, 65.0, 72.0));
    assert_eq!(work_zone(&site, &slope.posts[0], &method), rect(45.0, 33.0, 67.0, 74.0));
}

#[test]
fn above_the_last_lap_line_the_patch_runs_to_the_edge() {
    // Lap lines at 34, 68, 102, 136, 170 in; the ridge is at 204 in, where 204 is a line too but not below the top.
    let (slope, practice) = (slope(&[(56.0, 180.0)]), practice());
    let site = Site::of(&slope, &practice);
    let methods = methods(&site);
    assert_eq!(own_patch(&site, &slope.posts[0], &methods[0]), Some(rect(47.0, 180.0, 65.0, 204.0)));
    let findings = patches_without_lap_line(&slope.posts, &methods);
    assert_eq!(findings.len(), 1);
    assert_eq!(findings[0].code, "no-lap-line-above");
    assert_eq!(findings[0].path, "/slopes/0/posts/0");
}

#[test]
fn flashings_that_meet_are_found_once_a_post() {
    // 10 in wide: 10 in apart they touch, 9 in apart they meet.
    let slope = slope(&[(40.0, 31.0), (50.0, 31.0), (59.0, 31.0), (66.0, 31.0), (200.0, 31.0)]);
    let found = flashings_that_meet(&slope.posts);
    let messages: Vec<&str> = found.iter().map(|finding| finding.message.as_str()).collect();
    assert_eq!(
        messages,
        [
            "the deck flashing of `A2` meets that of `A3`",
            "the deck flashing of `A3` meets those of `A2` and 1 more",
            "the deck flashing of `A4` meets that of `A3`",
        ]
    );
}

proptest! {
    /// The sweep finds what trying every two finds.
    #[test]
    fn meeting_pairs_are_all_pairs_that_meet(
        sides in prop::collection::vec((-30_i64..30, -30_i64..30, 1_i64..20, 1_i64..20), 0..40),
    ) {
        let rects: Vec<Rect> = sides.iter().map(|&(u, v, w, h)| Rect::new(u, v, u + w, v + h)).collect();
        let mut swept = Vec::new();
        each_meeting_pair(&rects, |a, b| swept.push((a, b)));
        swept.sort_unstable();
        let mut tried = Vec::new();
        for a in 0..rects.len() {
            tried.extend((a + 1..rects.len()).filter(|&b| rects[a].meets(&rects[b])).map(|b| (a, b)));
        }
        prop_assert_eq!(swept, tried);
    }

    /// The first that meets each, and how many do, as trying every two finds; also where many lie on one spot.
    #[test]
    fn first_and_count_of_those_that_meet(
        sides in prop::collection::vec((-9_i64..9, -9_i64..9, 1_i64..9, 1_i64..9), 0..40),
    ) {
        let rects: Vec<Rect> = sides.iter().map(|&(u, v, w, h)| Rect::new(u, v, u + w, v + h)).collect();
        let tried: Vec<Option<(usize, usize)>> = (0..rects.len())
            .map(|own| {
                let meeting = (0..rects.len()).filter(|&other| other != own && rects[other].meets(&rects[own]));
                let meeting: Vec<usize> = meeting.collect();
                Some((*meeting.first()?, meeting.len()))
            })
            .collect();
        prop_assert_eq!(meeting::first_and_count(&rects), tried);
    }
}
