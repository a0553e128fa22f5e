//! Deck flashings that lie on each other.
use super::codes::DECK_FLASHINGS_MEET;
use super::each_meeting_pair;
use super::zone::flashing;
use crate::geometry::Rect;
use crate::model::{Post, Problem};

/// A finding for every post whose deck flashing meets another's: two flanges can't both lie flat.
pub fn flashings_that_meet(posts: &[Post]) -> Vec<Problem> {
    let rects: Vec<Rect> = posts.iter().map(flashing).collect();
    // Of each post, one post that it meets (the first in the job's order), and how many in all.
    let mut met: Vec<Option<(usize, usize)>> = vec![None; posts.len()];
    let mut meet = |post: usize, other: usize| {
        let (first, count) = met[post].unwrap_or((other, 0));
        met[post] = Some((first.min(other), count + 1));
    };
    each_meeting_pair(&rects, |a, b| {
        meet(a, b);
        meet(b, a);
    });
    posts
        .iter()
        .zip(met)
        .filter_map(|(post, met)| met.map(|(first, count)| finding(post, &posts[first], count - 1)))
        .collect()
}

fn finding(post: &Post, other: &Post, more: usize) -> Problem {
    let others = match more {
        0 => format!("that of `{}`", other.name),
        _ => format!("those of `{}` and {more} more", other.name),
    };
    let message = format!("the deck flashing of `{}` meets {others}", post.name);
    Problem::new(DECK_FLASHINGS_MEET, message, "move a post, or give both posts one flashing", &post.path)
}
