//! Whether the posts that the job gives are what and where they were.
use super::codes::{FIXED, KEPT};
use super::posts::{carries, stay};
use crate::geometry::Point;
use crate::model::{Display, Post, Problem, Slope};

/// A problem for each kept or fixed post that is missing or changed, and for each fixed one that its array has left.
pub(super) fn given(slope: &Slope, laid: &Slope, display: Display) -> Vec<Problem> {
    stay(slope).filter_map(|post| Some(problem(post, changed(post, slope, laid, display)?))).collect()
}

fn problem(post: &Post, what: String) -> Problem {
    let code = if post.fixed { FIXED } else { KEPT };
    let message = format!("`{}` {what}", post.name);
    Problem::new(code, message, "a layout leaves it as the job has it", post.path.as_str())
}

fn changed(post: &Post, slope: &Slope, laid: &Slope, display: Display) -> Option<String> {
    let Some(now) = laid.posts.iter().find(|now| now.name == post.name) else {
        return Some("is not in the laid job".to_owned());
    };
    if now.at != post.at {
        let [u, v] = [now.at.u - post.at.u, now.at.v - post.at.v].map(|by| display.length(by));
        return Some(format!("was moved: {u} along the eave, {v} up the slope"));
    }
    if format!("{:?}", now.assembly) != format!("{:?}", post.assembly) {
        return Some(format!("is `{}` and was `{}`", now.assembly.name, post.assembly.name));
    }
    let left = slope
        .arrays
        .iter()
        .zip(&laid.arrays)
        .find(|(array, moved)| post.fixed && carries(array, post) && !moved.covers(Point::from(post.at)));
    left.map(|(array, _)| format!("carries the array `{}`, which was moved away from it", array.name))
}
