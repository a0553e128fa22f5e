use crate::model::Lags;
use proptest::prelude::*;

use super::*;
use crate::geometry::{Point, Rect, grid};

fn area(rect: &Rect) -> i128 {
    i128::from(rect.right - rect.left) * i128::from(rect.upper - rect.lower)
}

/// An array, and posts below it; some in rows, some anywhere, some in one place.
fn array_and_posts() -> impl Strategy<Value = (Rect, Vec<Point>)> {
    let size = 1..400_i64;
    let posts = prop::collection::vec((0..=1000_i64, 0..=1000_i64, any::<bool>()), 1..30);
    (-200..200_i64, -200..200_i64, size.clone(), size, posts).prop_map(
        |(left, lower, width, height, posts)| {
            let inch = grid(Length::INCH);
            let array = Rect::new(left * inch, lower * inch, (left + width) * inch, (lower + height) * inch);
            let at = |(across, up, in_rows): (i64, i64, bool)| {
                let up = if in_rows { up / 250 * 250 } else { up };
                // Whole nanometres, as posts are given in.
                let part = |of: i64, share: i64| of * inch * share / 1000 / 2 * 2;
                Point::new(array.left + part(width, across), array.lower + part(height, up))
            };
            (array, posts.into_iter().map(at).collect())
        },
    )
}

proptest! {
    #[test]
    fn the_parts_fill_their_array_and_do_not_overlap((array, posts) in array_and_posts()) {
        let parts = tributary(&array, &posts);
        prop_assert_eq!(parts.iter().map(area).sum::<i128>(), area(&array));
        for (i, part) in parts.iter().enumerate() {
            prop_assert!(part.left <= part.right && part.lower <= part.upper);
            prop_assert_eq!(part.intersection(&array), *part);
            prop_assert!(parts[..i].iter().all(|other| !other.meets(part)));
        }
    }

    #[test]
    fn the_order_of_posts_changes_nothing((array, posts) in array_and_posts()) {
        let backwards: Vec<Point> = posts.iter().rev().copied().collect();
        let mut parts = tributary(&array, &posts);
        let mut again = tributary(&array, &backwards);
        parts.sort();
        again.sort();
        prop_assert_eq!(parts, again);
    }

    /// The trade's tributary area of a regular grid: spacing by spacing inside, and at the ends half a spacing and
    /// what the array reaches beyond.
    #[test]
    fn a_regular_grid_has_the_tributary_areas_of_textbooks(
        columns in 1..8_i64, rows in 1..6_i64, across in 10..100_i64, up in 13..100_i64,
        beside in 0..40_i64, below in 0..40_i64,
    ) {
        let inch = grid(Length::INCH);
        let array = Rect::new(0, 0, ((columns - 1) * across + 2 * beside) * inch, ((rows - 1) * up + 2 * below) * inch);
        let at = |i: i64| Point::new((beside + i % columns * across) * inch, (below + i / columns * up) * inch);
        let posts: Vec<Point> = (0..columns * rows).map(at).collect();
        for (i, part) in (0_i64..).zip(tributary(&array, &posts)) {
            let share = |place: i64, count: i64, spacing: i64, beyond: i64| {
                let ends = i64::from(place == 0) + i64::from(place == count - 1);
                (2 - ends) * spacing * inch / 2 + ends * beyond * inch
            };
            let width = share(i % columns, columns, across, beside);
            let height = share(i / columns, rows, up, below);
            prop_assert_eq!((part.right - part.left, part.upper - part.lower), (width, height));
        }
    }

    #[test]
    fn denser_wood_and_thicker_lags_hold_more(
        g in 0.2..0.99_f64, more in 0.001..0.01_f64, sixty_fourths in 8..63_i64,
    ) {
        let lag = |n: i64| Length::from_nm(n * Length::INCH.nm() / 64);
        let holds = withdrawal_lbf_per_in(g, lag(sixty_fourths));
        prop_assert!(withdrawal_lbf_per_in(g + more, lag(sixty_fourths)) > holds);
        prop_assert!(withdrawal_lbf_per_in(g, lag(sixty_fourths + 1)) > holds);
    }

    /// Never more than thread less tip, than what is left below the deck, than the wood is deep; less sheathing never
    /// leaves less.
    #[test]
    fn thread_in_the_wood_is_bounded(
        length in 20..400_i64, thread in 0..=1000_i64, tip in 0..=1000_i64, above in 0..300_i64, depth in 1..400_i64,
    ) {
        let mm = |n: i64| Length::from_nm(n * 1_000_000);
        let thread_length = Length::from_nm(length * thread * 1_000);
        let tip = thread_length.ratio(tip, 1000).unwrap();
        let lag = Lags { length: mm(length), thread_length, tip, ..lags("1/4 in", "3 in") };
        let in_wood = |above: i64, depth| lag.thread_in(mm(above), depth).length;
        let some = in_wood(above, Some(mm(depth)));
        prop_assert!(some >= Length::ZERO && some <= thread_length - tip && some <= mm(depth));
        prop_assert!(some <= (mm(length) - tip - mm(above)).max(Length::ZERO));
        prop_assert!(in_wood(above, None) >= some);
        prop_assert!(in_wood(above, None) >= in_wood(above + 1, None));
    }
}
