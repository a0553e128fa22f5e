//! The checker of layouts: it sees the job and the laid job only, and believes nothing.
//!
//! It shares no code with the search. What the posts do to the roof it takes from the laid job's takeoff.
mod apart;
mod codes;
mod given;
mod ground;
mod laid;
mod moved;
mod posts;
mod rails;
mod same;
mod spans;
mod stagger;
#[cfg(test)]
mod tests;
mod wood;
mod work;

pub use codes::CODES;

use crate::model::{Job, Problem};
use crate::takeoff::takeoff;

use laid::Laid;
use posts::Posts;

/// What is wrong with a layout: errors where it breaks a rule of the job, findings where a post severs a tile, fails a
/// check or stands nearer to a change of the work than the least margin. Empty where all is well. Whether a better
/// layout exists it does not say.
///
/// # Rule
///
/// The laid job differs from the job in where arrays with rails lie, each within its shift, and in the posts below
/// them; kept and fixed posts are what they were. Below each array the posts stand in as many straight lines as it has
/// rails, each within its clamp window: two posts or more a rail, of the rails' assembly, on rafters or, where that is
/// allowed, in the middle of a bay; spans and overhangs within what the array and the zones they meet allow; no two
/// posts of the slope nearer than the least distance; rails taking turns on the rafters where they are staggered. A
/// post stands on the slope, off its setbacks, with tile over it.
///
/// # Example
///
/// Rails that span 6 ft at most, posts 6 ft apart: nothing. One post 1 nm further: `layout-span`, naming the array, the
/// rail, both posts, the distance and the limit.
pub fn check(job: &Job, laid: &Job) -> Vec<Problem> {
    let mut found = same::same(job, laid);
    if !found.is_empty() {
        return found;
    }
    let takeoff = match takeoff(laid) {
        Ok(takeoff) => takeoff,
        Err(problems) => return problems.into_vec(),
    };
    for (place, ((slope, laid), taken)) in
        job.slopes.iter().zip(&laid.slopes).zip(&takeoff.slopes).enumerate()
    {
        let posts = Posts::of(slope, laid);
        found.extend(given::given(slope, laid, job.display));
        found.extend(posts::strays(&posts, slope, laid));
        for (i, (array, moved)) in slope.arrays.iter().zip(&laid.arrays).enumerate() {
            let Some(rails) = &array.rails else { continue };
            let path = format!("/slopes/{place}/arrays/{i}");
            let display = job.display;
            let laid = Laid { slope, laid, array, moved, rails, posts: &posts, path, display };
            found.extend(laid.check(&job.practice, taken));
        }
    }
    found
}
