//! The posts that a layout leaves as the job has them.
use std::collections::BTreeMap;

use super::codes::{FIXED, KEPT};
use super::extent::Extent;
use super::posts::{carries, stay};
use crate::model::{Display, Post, Problem, Slope};

/// A problem for each post that should be unchanged but is missing or changed, and for each fixed one from which its array
/// has moved away.
pub(super) fn changes(slope: &Slope, laid: &Slope, display: Display) -> Vec<Problem> {
    let mut by_name: BTreeMap<&str, &Post> = BTreeMap::new();
    for post in &laid.posts {
        by_name.entry(&post.name).or_insert(post);
    }
    let problem = |post: &Post| {
        let what = change(post, by_name.get(post.name.as_str()).copied(), slope, laid, display)?;
        let code = if post.fixed { FIXED } else { KEPT };
        let message = format!("`{}` {what}", post.name);
        Some(Problem::new(code, message, "a layout leaves it unchanged", post.path.clone()))
    };
    stay(slope).filter_map(problem).collect()
}

fn change(post: &Post, now: Option<&Post>, slope: &Slope, laid: &Slope, display: Display) -> Option<String> {
    let Some(now) = now else {
        return Some("is missing from the laid-out job".to_owned());
    };
    if now.at != post.at {
        let [u, v] = [now.at.u - post.at.u, now.at.v - post.at.v].map(|by| display.length(by));
        return Some(format!("was moved: {u} along the eave, {v} up the slope"));
    }
    if now.assembly != post.assembly {
        return Some(format!("is `{}` and was `{}`", now.assembly.name, post.assembly.name));
    }
    let mut arrays = slope.arrays.iter().zip(&laid.arrays);
    let left =
        arrays.find(|(array, moved)| post.fixed && carries(array, post) && !Extent::new(moved).covers(post));
    left.map(|(array, _)| format!("carries the array `{}`, which was moved away from it", array.name))
}
