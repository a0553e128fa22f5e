//! Which posts the job gives and which a layout sets.
use super::codes::STRAY;
use crate::geometry::Point;
use crate::model::{Array, Post, Problem, Slope};

/// The posts of a laid slope.
pub(super) struct Posts<'a> {
    /// Those that the job gives, by their names.
    pub(super) given: Vec<&'a Post>,
    /// Those that the layout sets, each with its place in the slope's list.
    pub(super) set: Vec<(usize, &'a Post)>,
}

impl<'a> Posts<'a> {
    pub(super) fn of(slope: &Slope, laid: &'a Slope) -> Posts<'a> {
        let names: Vec<&str> = stay(slope).map(|post| post.name.as_str()).collect();
        let (given, set) = laid
            .posts
            .iter()
            .enumerate()
            .partition::<Vec<_>, _>(|(_, post)| names.contains(&post.name.as_str()));
        Posts { given: given.into_iter().map(|(_, post)| post).collect(), set }
    }
}

/// The posts of the job that a layout leaves alone: those that are fixed, and those below no array with rails.
pub(super) fn stay(slope: &Slope) -> impl Iterator<Item = &Post> {
    slope.posts.iter().filter(|post| post.fixed || !slope.arrays.iter().any(|array| carries(array, post)))
}

/// Whether a post is below an array with rails; its edge counts.
pub(super) fn carries(array: &Array, post: &Post) -> bool {
    array.rails.is_some() && array.covers(Point::from(post.at))
}

/// The array with rails that a post which was set is below, where the arrays lie now. Where two touch and it is below
/// the edge of both, its name says whose it is.
pub(super) fn carrier<'a>(post: &Post, slope: &Slope, laid: &'a Slope) -> Option<&'a Array> {
    let arrays = slope.arrays.iter().zip(&laid.arrays).filter(|(array, _)| array.rails.is_some());
    let above = arrays.map(|(_, moved)| moved).filter(|moved| moved.covers(Point::from(post.at)));
    let is_named =
        |moved: &Array| post.name.strip_prefix(&moved.name).is_some_and(|rest| rest.starts_with('-'));
    above.reduce(|first, next| if is_named(next) && !is_named(first) { next } else { first })
}

/// Posts that were set and are below no array with rails.
pub(super) fn strays(posts: &Posts, slope: &Slope, laid: &Slope) -> Vec<Problem> {
    let astray = posts.set.iter().filter(|(_, post)| carrier(post, slope, laid).is_none());
    let problem = |(_, post): &(usize, &Post)| {
        let message = format!("`{}` is below no array with rails, and the job does not have it", post.name);
        Problem::new(STRAY, message, "leave it out, or stand it on a rail", post.path.as_str())
    };
    astray.map(problem).collect()
}
