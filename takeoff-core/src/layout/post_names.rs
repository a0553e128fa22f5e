//! Names of the posts of an array.
use std::collections::BTreeSet;

use super::placement::RailPlacement;
use super::rail::Anchor;
use super::replaced::is_replaced;
use crate::model::Slope;

/// The names of the posts of an array, by rail: `west-2-3` is the third from the left on the second rail from below. A fixed
/// post keeps its own name; a name that another post has gets a star.
pub(crate) fn post_names(slope: &Slope, array: &str, rails: &[RailPlacement]) -> Vec<Vec<String>> {
    let stay = slope.posts.iter().filter(|post| !is_replaced(slope, post));
    let mut taken: BTreeSet<String> = stay.map(|post| post.name.clone()).collect();
    let mut name = |rail: usize, number: usize, anchor: Anchor| match anchor {
        Anchor::Fixed(index, _) => slope.posts.get(index).map(|post| post.name.clone()).unwrap_or_default(),
        _ => unused(format!("{array}-{}-{}", rail + 1, number + 1), &mut taken),
    };
    let rails = rails.iter().enumerate();
    rails
        .map(|(rail, of_rail)| {
            let posts = of_rail.posts.iter().enumerate();
            posts.map(|(number, (anchor, _))| name(rail, number, *anchor)).collect()
        })
        .collect()
}

/// A name that no other post has, which then counts as taken.
fn unused(name: String, taken: &mut BTreeSet<String>) -> String {
    let mut name = name;
    while !taken.insert(name.clone()) {
        name.push('*');
    }
    name
}
