//! One array with rails, as it is laid.
use super::posts::{Posts, carrier};
use super::rails::rails;
use crate::model::{Array, Code, Display, Post, Practice, Problem, Rails, Slope};
use crate::roof::Site;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::Length;

/// An array with rails: the job's rules, and what was made of them.
pub(super) struct Laid<'a> {
    /// The slope in the job.
    pub(super) slope: &'a Slope,
    /// The slope as laid.
    pub(super) laid: &'a Slope,
    /// The array in the job.
    pub(super) array: &'a Array,
    /// The array as laid.
    pub(super) moved: &'a Array,
    /// Its rails, by the job.
    pub(super) rails: &'a Rails,
    pub(super) posts: &'a Posts<'a>,
    /// JSON Pointer to where the job gives the array.
    pub(super) path: String,
    pub(super) display: Display,
}

impl<'a> Laid<'a> {
    /// What is wrong with it.
    pub(super) fn check(&self, practice: &Practice, taken: &SlopeTakeoff) -> Vec<Problem> {
        let mut found = self.moves();
        let (rails, of_rails) = rails(self);
        found.extend(of_rails);
        for rail in &rails {
            found.extend(self.spans(rail));
        }
        found.extend(self.stagger(&rails));
        found.extend(self.apart());
        let site = Site::of(self.slope, practice);
        for &(place, post) in &self.set() {
            found.extend(self.wood(post));
            let ground = self.ground(&site, post);
            if ground.is_empty() {
                found.extend(self.work(practice, post, &taken.posts[place]));
            }
            found.extend(ground);
        }
        found
    }

    /// The posts that were set below it, each with its place in the slope's list.
    pub(super) fn set(&self) -> Vec<(usize, &'a Post)> {
        let carrier =
            |post: &Post| carrier(post, self.slope, self.laid).is_some_and(|by| by.name == self.moved.name);
        self.posts.set.iter().copied().filter(|(_, post)| carrier(post)).collect()
    }

    /// The fixed posts that the job has below it and that still are.
    pub(super) fn fixed(&self) -> impl Iterator<Item = &'a Post> {
        let given = self.posts.given.iter().copied();
        let covers = |post: &Post| [self.array, self.moved].iter().all(|array| array.covers(post.at.into()));
        given.filter(move |post| post.fixed && covers(post))
    }

    /// A broken rule.
    pub(super) fn error(&self, code: Code, what: String, help: &str) -> Problem {
        Problem::new(code, self.of(&what), help, self.path.as_str())
    }

    /// What is allowed, and bad.
    pub(super) fn finding(&self, code: Code, what: String, help: &str) -> Problem {
        Problem::new(code, self.of(&what), help, &self.path)
    }

    fn of(&self, what: &str) -> String {
        format!("array `{}`: {what}", self.array.name)
    }

    pub(super) fn show(&self, length: Length) -> String {
        self.display.length(length)
    }
}
