//! A job with its arrays and posts where a layout puts them.
use std::collections::BTreeSet;

use crate::geometry::SlopePoint;
use crate::layout::placement::RailPlacement;
use crate::layout::rail::Anchor;
use crate::layout::solve::{SolvedArray, is_replaced};
use crate::model::{Job, Post, Slope};
use crate::units::Length;

/// The job with the arrays moved and their posts in place of those that the layout replaces: posts that stay come
/// first, then those of each array, rail by rail from the lowest, each from left to right: `west-2-3` is the third on
/// the second rail of `west`.
pub(crate) fn apply(job: &Job, laid: &[SolvedArray]) -> Job {
    let mut job = job.clone();
    for (place, slope) in job.slopes.iter_mut().enumerate() {
        let replaced: Vec<bool> = slope.posts.iter().map(|post| is_replaced(slope, post)).collect();
        let mut replaced = replaced.into_iter();
        slope.posts.retain(|_| !replaced.next().unwrap_or(false));
        for SolvedArray { array, placed, .. } in laid.iter().filter(|laid| laid.slope == place) {
            let names = post_names(slope, &slope.arrays[*array].name, &placed.rails);
            let array = &mut slope.arrays[*array];
            let [u, v] = [placed.at.u, placed.at.v].map(|steps| Length::from_nm(steps / 2));
            array.at = SlopePoint { u, v };
            let Some(rails) = &array.rails else { continue };
            for (rail, names) in placed.rails.iter().zip(names) {
                for (&(anchor, u), name) in rail.posts.iter().zip(names) {
                    if matches!(anchor, Anchor::Fixed(..)) {
                        continue;
                    }
                    let [u, v] = [u, rail.v].map(|steps| Length::from_nm(steps / 2));
                    let path = format!("/slopes/{place}/arrays");
                    let at = SlopePoint { u, v };
                    slope.posts.push(Post { name, assembly: rails.assembly.clone(), at, fixed: false, path });
                }
            }
        }
    }
    job
}

/// The names of the posts of an array's rails: `west-2-3` is the third from the left on the second rail from below. A
/// fixed post keeps its own, and a name that is taken gets a star.
pub(crate) fn post_names(slope: &Slope, array: &str, rails: &[RailPlacement]) -> Vec<Vec<String>> {
    let stay = slope.posts.iter().filter(|post| !is_replaced(slope, post));
    let mut taken: BTreeSet<String> = stay.map(|post| post.name.clone()).collect();
    let mut of_post = |rail: usize, number: usize, anchor: Anchor| match anchor {
        Anchor::Fixed(place, _) => slope.posts.get(place).map(|post| post.name.clone()).unwrap_or_default(),
        _ => unused(format!("{array}-{}-{}", rail + 1, number + 1), &mut taken),
    };
    let rails = rails.iter().enumerate();
    rails
        .map(|(rail, of_rail)| {
            let posts = of_rail.posts.iter().enumerate();
            posts.map(|(number, (anchor, _))| of_post(rail, number, *anchor)).collect()
        })
        .collect()
}

/// A name that no other post has.
fn unused(name: String, names: &mut BTreeSet<String>) -> String {
    let mut name = name;
    while !names.insert(name.clone()) {
        name.push('*');
    }
    name
}
