//! Given posts and set posts of a laid-out slope.
use std::collections::BTreeSet;

use super::codes::STRAY;
use super::extent::Extent;
use crate::model::{Array, Post, Problem, Slope};

/// The posts of a laid-out slope.
pub(super) struct Posts<'a> {
    /// Posts of the job, by their names.
    pub(super) given: Vec<&'a Post>,
    /// Posts of the layout, each with its index in the slope's list.
    pub(super) set: Vec<(usize, &'a Post)>,
}

impl<'a> Posts<'a> {
    pub(super) fn new(slope: &Slope, laid: &'a Slope) -> Posts<'a> {
        let names: BTreeSet<&str> = stay(slope).map(|post| post.name.as_str()).collect();
        let posts = laid.posts.iter().enumerate();
        let (given, set): (Vec<_>, Vec<_>) = posts.partition(|(_, post)| names.contains(post.name.as_str()));
        Posts { given: given.into_iter().map(|(_, post)| post).collect(), set }
    }
}

/// The posts of the job that a layout leaves alone: fixed posts, and posts below no array with rails.
pub(super) fn stay(slope: &Slope) -> impl Iterator<Item = &Post> {
    slope.posts.iter().filter(|post| post.fixed || !slope.arrays.iter().any(|array| carries(array, post)))
}

/// Whether a post is below an array with rails, or below its edge.
pub(super) fn carries(array: &Array, post: &Post) -> bool {
    array.rails.is_some() && Extent::new(array).covers(post)
}

/// The array with rails above a set post, at the array's place in the layout. Where the post is below the edges of two
/// arrays that touch, its name decides.
pub(super) fn array_above<'a>(post: &Post, slope: &Slope, laid: &'a Slope) -> Option<&'a Array> {
    let arrays = slope.arrays.iter().zip(&laid.arrays).filter(|(array, _)| array.rails.is_some());
    let above = arrays.map(|(_, moved)| moved).filter(|moved| Extent::new(moved).covers(post));
    let is_named =
        |moved: &Array| post.name.strip_prefix(&moved.name).is_some_and(|rest| rest.starts_with('-'));
    above.reduce(|first, next| if is_named(next) && !is_named(first) { next } else { first })
}

/// Set posts below no array with rails.
pub(super) fn strays(posts: &Posts, slope: &Slope, laid: &Slope) -> Vec<Problem> {
    let strays = posts.set.iter().filter(|(_, post)| array_above(post, slope, laid).is_none());
    let problem = |(_, post): &(usize, &Post)| {
        let message = format!("`{}` is below no array with rails, and the job does not have it", post.name);
        Problem::new(STRAY, message, "remove it, or put it on a rail", post.path.clone())
    };
    strays.map(problem).collect()
}
