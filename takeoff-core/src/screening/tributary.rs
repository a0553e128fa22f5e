//! What each post carries of its array.
use crate::geometry::{Point, Rect, grid};
use crate::units::Length;

/// Posts that differ by no more than this in `v` from the next are in one row: on one rail.
const ROW_TOLERANCE: Length = Length::from_nm(6 * Length::INCH.nm());

/// The part of an array that each of its posts carries, in the order of the posts.
///
/// # Rule
///
/// Posts are sorted into rows by `v`: a gap of more than 6 in begins the next row. A row's line is midway between its
/// lowest and its highest post. Along its row a post carries halfway to the posts beside it, and to the array's edge at
/// the ends; up the slope a row carries halfway to the lines of the rows beside it, and to the array's edge below the
/// lowest and above the highest. So the parts fill the array (its gaps with it) and do not overlap.
///
/// # Example
///
/// Two rows, 39 in apart, of posts 48 in apart, each far from the ends: halfway to all sides is `48 · 39 = 1872 in²`,
/// 13 sq ft; the trade's tributary area of a regular grid is the same, spacing by spacing.
pub fn tributary(array: &Rect, posts: &[Point]) -> Vec<Rect> {
    let mut order: Vec<usize> = (0..posts.len()).collect();
    order.sort_by_key(|&post| (posts[post].v, posts[post].u, post));
    let tolerance = grid(ROW_TOLERANCE);
    let mut rows: Vec<&mut [usize]> =
        order.chunk_by_mut(|&below, &above| posts[above].v - posts[below].v <= tolerance).collect();
    let lines: Vec<i64> =
        rows.iter().map(|row| midway(posts[row[0]].v, posts[row[row.len() - 1]].v)).collect();
    let mut parts = vec![*array; posts.len()];
    for (row, [lower, upper]) in rows.iter_mut().zip(between(array.lower, array.upper, &lines)) {
        row.sort_by_key(|&post| (posts[post].u, post));
        let along: Vec<i64> = row.iter().map(|&post| posts[post].u).collect();
        for (&post, [left, right]) in row.iter().zip(between(array.left, array.right, &along)) {
            parts[post] = Rect::new(left, lower, right, upper);
        }
    }
    parts
}

/// For each of some ascending places, from halfway to the one before to halfway to the one after; the first from
/// `first` on, the last up to `last`.
fn between(first: i64, last: i64, places: &[i64]) -> impl Iterator<Item = [i64; 2]> {
    (0..places.len()).map(move |i| {
        let begins = if i == 0 { first } else { midway(places[i - 1], places[i]) };
        let ends = places.get(i + 1).map_or(last, |&next| midway(places[i], next));
        [begins, ends]
    })
}

/// Halfway between two places, rounded down to the grid.
fn midway(a: i64, b: i64) -> i64 {
    (a + b).div_euclid(2)
}
