//! The checker of layouts: it sees the job and the laid-out job only, and trusts nothing from the search.
//!
//! It shares no code with the search. The work of posts comes from the takeoff of the laid-out job; distances, rafters and
//! extents of arrays are computed here from plain geometry, in another form than in the model that the search uses. A rule
//! that both got wrong in the same way would have to be wrong twice.
mod array;
mod codes;
mod distance;
mod edges;
mod extent;
mod kept_posts;
mod posts;
mod rafters;
mod rails;
mod roof_work;
mod shift;
mod slope_limits;
mod spans;
mod stagger;
#[cfg(test)]
mod tests;
mod unchanged;

pub use codes::CODES;

use crate::model::{Job, Problem};
use crate::takeoff::takeoff;

use array::LaidArray;
use posts::Posts;

/// The violations of a layout: errors where it breaks a rule of the job, findings where a post severs a tile, fails a check
/// or is nearer than the least margin to a change of its work. Empty for a valid layout without findings. Optimality is
/// not checked.
///
/// # Rule
///
/// The laid-out job differs from the job only in the places of arrays with rails, each within its shift, and in the posts
/// below them; other posts and fixed posts are unchanged. Below each array the posts form as many straight lines as it has
/// rails, each within its clamp window, with two posts or more on a rail, of the rails' assembly, on rafters or, if the
/// rails allow it, in the middle of a bay. Spans and overhangs are within the limits of the array and of the zones they
/// meet; no two posts of the slope are nearer than the least distance; staggered rails take turns on the rafters. A post is
/// on the slope, clear of its setbacks, with tile over it.
///
/// # Example
///
/// Rails that span 6 ft at most, posts 6 ft apart: empty. One post 1 nm further: `layout-span`, with the array, the rail,
/// both posts, the span and its limit.
pub fn check(job: &Job, laid: &Job) -> Vec<Problem> {
    let mut found = unchanged::differences(job, laid);
    if !found.is_empty() {
        return found;
    }
    let takeoff = match takeoff(laid) {
        Ok(takeoff) => takeoff,
        Err(problems) => return problems.into_vec(),
    };
    let slopes = job.slopes.iter().zip(&laid.slopes).zip(&takeoff.slopes).enumerate();
    for (slope_index, ((slope, laid), taken)) in slopes {
        let posts = Posts::new(slope, laid);
        found.extend(kept_posts::changes(slope, laid, job.display));
        found.extend(posts::strays(&posts, slope, laid));
        for (array_index, (array, moved)) in slope.arrays.iter().zip(&laid.arrays).enumerate() {
            let Some(rails) = &array.rails else { continue };
            let path = format!("/slopes/{slope_index}/arrays/{array_index}");
            let display = job.display;
            let array = LaidArray { slope, laid, array, moved, rails, posts: &posts, path, display };
            found.extend(array.check(&job.practice, taken));
        }
    }
    found
}
