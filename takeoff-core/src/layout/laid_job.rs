//! The job with its arrays and posts where a layout puts them.
use super::post_names::post_names;
use super::replaced::is_replaced;
use super::solve::SolvedArray;
use crate::geometry::SlopePoint;
use crate::model::{Job, Post};
use crate::units::Length;

/// The job with the arrays moved, and with new posts in place of the replaced ones. Posts that stay come first, then those
/// of each array, rail by rail from the lowest up and from left to right.
pub(crate) fn apply(job: &Job, solved: &[SolvedArray]) -> Job {
    let mut job = job.clone();
    for (place, slope) in job.slopes.iter_mut().enumerate() {
        let replaced: Vec<bool> = slope.posts.iter().map(|post| is_replaced(slope, post)).collect();
        let mut replaced = replaced.into_iter();
        slope.posts.retain(|_| !replaced.next().unwrap_or(false));
        for SolvedArray { array, placement, .. } in solved.iter().filter(|solved| solved.slope == place) {
            let names = post_names(slope, &slope.arrays[*array].name, &placement.rails);
            let array = &mut slope.arrays[*array];
            array.at = slope_point(placement.at.u, placement.at.v);
            let Some(rails) = &array.rails else { continue };
            for (rail, names) in placement.rails.iter().zip(names) {
                for (&(anchor, u), name) in rail.posts.iter().zip(names) {
                    if anchor.is_fixed() {
                        continue;
                    }
                    slope.posts.push(Post {
                        name,
                        assembly: rails.assembly.clone(),
                        at: slope_point(u, rail.v),
                        fixed: false,
                        path: format!("/slopes/{place}/arrays"),
                    });
                }
            }
        }
    }
    job
}

/// A place in whole nanometres, from grid steps.
fn slope_point(u: i64, v: i64) -> SlopePoint {
    let [u, v] = [u, v].map(|steps| Length::from_nm(steps / 2));
    SlopePoint { u, v }
}
