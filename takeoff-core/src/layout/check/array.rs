//! One array with rails, as laid out.
use super::extent::Extent;
use super::posts::{Posts, array_above};
use super::rails::rails;
use crate::model::{Array, Code, Display, Post, Practice, Problem, Rails, Slope};
use crate::roof::outline_of;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::Length;

/// An array with rails: the rules of the job, and the result of the layout.
pub(super) struct LaidArray<'a> {
    /// The slope in the job.
    pub(super) slope: &'a Slope,
    /// The slope in the laid-out job.
    pub(super) laid: &'a Slope,
    /// The array in the job.
    pub(super) array: &'a Array,
    /// The array in the laid-out job.
    pub(super) moved: &'a Array,
    /// Its rails in the job.
    pub(super) rails: &'a Rails,
    pub(super) posts: &'a Posts<'a>,
    /// JSON Pointer to the array in the job.
    pub(super) path: String,
    pub(super) display: Display,
}

impl<'a> LaidArray<'a> {
    /// Its violations; `taken` is the takeoff of its laid-out slope.
    pub(super) fn check(&self, practice: &Practice, taken: &SlopeTakeoff) -> Vec<Problem> {
        let outline = outline_of(self.slope);
        let mut found = self.shift(&outline);
        let (rails, of_rails) = rails(self);
        found.extend(of_rails);
        for rail in &rails {
            found.extend(self.spans(rail));
        }
        found.extend(self.stagger(&rails));
        found.extend(self.distances());
        for &(index, post) in &self.set() {
            found.extend(self.wood(post));
            let limits = self.slope_limits(&outline, post);
            if limits.is_empty() {
                found.extend(self.roof_work(practice, post, &taken.posts[index]));
            }
            found.extend(limits);
        }
        found
    }

    /// The set posts below it, each with its index in the slope's list.
    pub(super) fn set(&self) -> Vec<(usize, &'a Post)> {
        let is_own = |post: &Post| {
            array_above(post, self.slope, self.laid).is_some_and(|by| by.name == self.moved.name)
        };
        self.posts.set.iter().copied().filter(|(_, post)| is_own(post)).collect()
    }

    /// The fixed posts below it, both in the job and in the laid-out job.
    pub(super) fn fixed(&self) -> impl Iterator<Item = &'a Post> {
        let extents = [self.array, self.moved].map(Extent::new);
        let given = self.posts.given.iter().copied();
        given.filter(move |post| post.fixed && extents.iter().all(|extent| extent.covers(post)))
    }

    /// A problem of the array.
    pub(super) fn problem(&self, code: Code, what: String, help: &str) -> Problem {
        Problem::new(code, format!("array `{}`: {what}", self.array.name), help, self.path.as_str())
    }

    pub(super) fn show(&self, length: Length) -> String {
        self.display.length(length)
    }
}
