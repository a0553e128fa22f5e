//! From the posts below an array to its rails.
use std::collections::BTreeMap;

use super::array::Laid;
use super::codes::{ASSEMBLY, CLAMP, FIXED, RAILS};
use crate::model::{Post, Problem};
use crate::units::Length;

/// A rail and its posts.
pub(super) struct Rail<'a> {
    /// Counted from 0, from the lowest up.
    pub(super) number: usize,
    /// Where it runs.
    pub(super) v: Length,
    /// From left to right.
    pub(super) posts: Vec<&'a Post>,
}

/// The lines that the posts stand in, by height.
type Lines<'a> = BTreeMap<Length, Vec<&'a Post>>;

/// The rails of a laid array, as far as its posts make out what they are.
pub(super) fn rails<'a>(laid: &Laid<'a>) -> (Vec<Rail<'a>>, Vec<Problem>) {
    let bands = bands(laid);
    let mut lines = Lines::new();
    for post in laid.set().into_iter().map(|(_, post)| post).chain(laid.fixed()) {
        lines.entry(post.at.v).or_default().push(post);
    }
    let mut found = off_rail(laid, &bands, &mut lines);
    found.extend(assemblies(laid));
    if lines.len() != bands.len() {
        found.push(miscounted(laid, &bands, &lines));
        return (Vec::new(), found);
    }
    let mut rails = Vec::new();
    for (number, ((v, mut posts), &(from, to))) in lines.into_iter().zip(&bands).enumerate() {
        if !(from..=to).contains(&v) {
            let [at, from, to] = [v, from, to].map(|length| laid.show(length));
            let what =
                format!("rail {} lies at {at}, and may be clamped from {from} to {to} only", number + 1);
            found.push(laid.error(CLAMP, what, "move the rail into its clamp window"));
        }
        posts.sort_by_key(|post| post.at.u);
        rails.push(Rail { number, v, posts });
    }
    (rails, found)
}

/// From where to where each rail may run, from the lowest up.
fn bands(laid: &Laid) -> Vec<(Length, Length)> {
    let pitch = (laid.array.module_height + laid.array.row_gap).nm();
    let rows = (0..i64::from(laid.array.rows)).map(|row| laid.moved.at.v + Length::from_nm(row * pitch));
    let clamps = &laid.rails.clamps;
    rows.flat_map(|lower| clamps.iter().map(move |clamp| (lower + clamp.from, lower + clamp.to))).collect()
}

/// Takes the lines of fixed posts out that can be no rail, where there are too many lines.
fn off_rail(laid: &Laid, bands: &[(Length, Length)], lines: &mut Lines) -> Vec<Problem> {
    let mut found = Vec::new();
    let heights: Vec<Length> = lines.keys().copied().collect();
    for v in heights {
        let within = |&&(from, to): &&(Length, Length)| (from..=to).contains(&v);
        let others = |&(from, to): &(Length, Length)| lines.range(from..=to).count();
        let may_be_rail = bands.iter().find(within).is_some_and(|band| others(band) == 1);
        if lines.len() <= bands.len() || may_be_rail || !lines[&v].iter().all(|post| post.fixed) {
            continue;
        }
        for post in lines.remove(&v).into_iter().flatten() {
            let what = format!("the fixed post `{}` at {} is on none of its rails", post.name, laid.show(v));
            found.push(laid.error(FIXED, what, "run a rail over it"));
        }
    }
    found
}

fn miscounted(laid: &Laid, bands: &[(Length, Length)], lines: &Lines) -> Problem {
    let heights: Vec<String> = lines.keys().map(|&v| laid.show(v)).collect();
    let heights = if heights.is_empty() { "none".to_owned() } else { heights.join(", ") };
    let [some, asked] = [lines.len(), bands.len()];
    let what = format!("its posts stand in {some} lines ({heights}), and its rails are {asked}");
    laid.error(RAILS, what, "stand all posts of a rail at one height, and leave out no rail")
}

/// What was set and is not what the rails stand on.
fn assemblies(laid: &Laid) -> Vec<Problem> {
    let asked = &laid.rails.assembly;
    let other = laid.set().into_iter().filter(|(_, post)| post.assembly.name != asked.name);
    other
        .map(|(_, post)| {
            let what = format!(
                "`{}` is `{}`, and its rails stand on `{}`",
                post.name, post.assembly.name, asked.name
            );
            laid.error(ASSEMBLY, what, "take the assembly that the rails ask for")
        })
        .collect()
}
