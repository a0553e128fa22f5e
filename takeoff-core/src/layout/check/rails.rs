//! From the posts below an array to its rails.
use std::collections::BTreeMap;

use super::array::LaidArray;
use super::codes::{ASSEMBLY, CLAMP, FIXED, RAILS};
use crate::model::{Post, Problem};
use crate::units::Length;

/// A rail and its posts.
pub(super) struct Rail<'a> {
    /// Counted from 0, from the lowest up.
    pub(super) number: usize,
    pub(super) v: Length,
    /// From left to right.
    pub(super) posts: Vec<&'a Post>,
}

/// Posts by height: each height is a line of posts.
type Lines<'a> = BTreeMap<Length, Vec<&'a Post>>;

/// The rails of a laid-out array, and the violations found on the way; no rails if their number is wrong.
pub(super) fn rails<'a>(array: &LaidArray<'a>) -> (Vec<Rail<'a>>, Vec<Problem>) {
    let windows = windows(array);
    let mut lines = Lines::new();
    for post in array.set().into_iter().map(|(_, post)| post).chain(array.fixed()) {
        lines.entry(post.at.v).or_default().push(post);
    }
    let mut found = remove_stray_fixed_lines(array, &windows, &mut lines);
    found.extend(assemblies(array));
    if lines.len() != windows.len() {
        found.push(miscounted(array, &windows, &lines));
        return (Vec::new(), found);
    }
    let mut rails = Vec::new();
    for (number, ((v, mut posts), &(from, to))) in lines.into_iter().zip(&windows).enumerate() {
        if !(from..=to).contains(&v) {
            let [at, from, to] = [v, from, to].map(|length| array.show(length));
            let what = format!("rail {} is at {at}; its clamp window is from {from} to {to}", number + 1);
            found.push(array.problem(CLAMP, what, "move the rail into its clamp window"));
        }
        posts.sort_by_key(|post| post.at.u);
        rails.push(Rail { number, v, posts });
    }
    (rails, found)
}

/// The clamp window of each rail, from the lowest up.
fn windows(array: &LaidArray) -> Vec<(Length, Length)> {
    let pitch = (array.array.module_height + array.array.row_gap).nm();
    let rows = (0..i64::from(array.array.rows)).map(|row| array.moved.at.v + Length::from_nm(row * pitch));
    let clamps = &array.rails.clamps;
    rows.flat_map(|lower| clamps.iter().map(move |clamp| (lower + clamp.from, lower + clamp.to))).collect()
}

/// Removes lines of fixed posts that can be no rail, as long as there are more lines than rails: lines outside the windows,
/// or beside another line in the same window.
fn remove_stray_fixed_lines(
    array: &LaidArray,
    windows: &[(Length, Length)],
    lines: &mut Lines,
) -> Vec<Problem> {
    let mut found = Vec::new();
    let heights: Vec<Length> = lines.keys().copied().collect();
    for v in heights {
        let holds = |&&(from, to): &&(Length, Length)| (from..=to).contains(&v);
        let lines_in = |&(from, to): &(Length, Length)| lines.range(from..=to).count();
        let may_be_rail = windows.iter().find(holds).is_some_and(|window| lines_in(window) == 1);
        if lines.len() <= windows.len() || may_be_rail || !lines[&v].iter().all(|post| post.fixed) {
            continue;
        }
        for post in lines.remove(&v).into_iter().flatten() {
            let what = format!("the fixed post `{}` at {} is on none of its rails", post.name, array.show(v));
            found.push(array.problem(FIXED, what, "run a rail over it"));
        }
    }
    found
}

fn miscounted(array: &LaidArray, windows: &[(Length, Length)], lines: &Lines) -> Problem {
    let heights: Vec<String> = lines.keys().map(|&v| array.show(v)).collect();
    let heights = if heights.is_empty() { "none".to_owned() } else { heights.join(", ") };
    let what = format!("its posts form {} lines ({heights}); its rails are {}", lines.len(), windows.len());
    array.problem(RAILS, what, "put all posts of a rail at one height, and posts on every rail")
}

/// Set posts of another assembly than the rails'.
fn assemblies(array: &LaidArray) -> Vec<Problem> {
    let of_rails = &array.rails.assembly.name;
    let others = array.set().into_iter().filter(|(_, post)| post.assembly.name != *of_rails);
    others
        .map(|(_, post)| {
            let what = format!("`{}` is `{}`; its rails take `{of_rails}`", post.name, post.assembly.name);
            array.problem(ASSEMBLY, what, "use the assembly of the rails")
        })
        .collect()
}
