//! Deck flashings that lie on each other.
use super::codes::DECK_FLASHINGS_MEET;
use super::meeting::first_and_count;
use super::zone::flashing;
use crate::geometry::Rect;
use crate::model::{Post, Problem};

/// A finding for every post whose deck flashing meets another's: two flanges can't both lie flat.
pub fn flashings_that_meet(posts: &[Post]) -> Vec<Problem> {
    let rects: Vec<Rect> = posts.iter().map(flashing).collect();
    posts
        .iter()
        .zip(first_and_count(&rects))
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
