//! Screening of lag screws in withdrawal against wind uplift: what a post carries, what lifts it, what holds it.
//!
//! ```text
//! arrays ─ tributary ─ wind ─ uplift ─────────────┐
//! lags ─ thread in the wood ─ withdrawal ─ resistance ─┴─ ratio
//!                         └─ distances
//! ```
//!
//! It is a screening: it shows its inputs and a ratio, says what it does not cover, and defers to a licensed engineer
//! and the local code.
//!
//! # What does the screening assume?
//!
//! Posts less than 6 in apart in `v`, one after the other, are in one row. A post that is not screened carries its part of
//! the array all the same. The dead load is square to the roof. Rafters reach as far as the outline. A post stands over the
//! middle of its blocking. Lags of one post stand in one line along the rafter. The edge distance is 1.5 diameters or the
//! assembly's own, whichever is greater. Uplift from the wind equation is at least 16 psf unless the job says otherwise;
//! `γ_E` is that of exposed modules.
mod distances;
mod findings;
mod post;
mod result;
#[cfg(test)]
mod tests;
mod tributary;
mod wind;
mod withdrawal;
mod wood;
mod words;

pub use distances::{Distance, Distances};
pub use result::{NotScreened, PostScreening, Screening};
pub use tributary::tributary;
pub use wind::{PressureFrom, Uplift, area_factor, velocity_pressure};
pub use withdrawal::{pilot_shares, withdrawal_lbf_per_in};
pub use wood::{Member, Unscreened};
pub use words::{FORMULAS, NOT_COVERED, NOTE};

use crate::geometry::{Point, Rect};
use crate::model::{Job, PostId, Problem, Slope};
use crate::slope_takeoff::SlopeTakeoff;

use post::{Ground, screen};
use wood::Wood;

/// The screening of a job, where it asks for one and gives enough for at least one post; and what is odd about it.
///
/// `slopes` are the takeoffs of the job's slopes: they say what wood is below each post.
pub fn screening(job: &Job, slopes: &[SlopeTakeoff]) -> (Option<Screening>, Vec<Problem>) {
    let Some(loads) = &job.screening else { return (None, Vec::new()) };
    let (mut posts, mut not_screened) = (Vec::new(), Vec::new());
    let mut found = Vec::new();
    for (place, (slope, takeoff)) in job.slopes.iter().zip(slopes).enumerate() {
        let (mut screened, mut left_out) = (Vec::new(), Vec::new());
        for (i, carried) in carried(slope).into_iter().enumerate() {
            match ground(slope, takeoff, i, carried) {
                Ok(ground) => {
                    let id = (place, PostId::new(i));
                    screened.push((&slope.posts[i], screen(id, &ground, loads)));
                }
                Err(reason) => left_out.push(NotScreened { slope: place, post: PostId::new(i), reason }),
            }
        }
        found.extend(findings::of_slope(place, slope, &left_out));
        found.extend(findings::of_posts(&screened, job.display));
        posts.extend(screened.into_iter().map(|(_, row)| row));
        not_screened.extend(left_out);
    }
    if posts.is_empty() {
        return (None, found);
    }
    let screening = Screening { inputs: loads.inputs.clone(), posts, not_screened };
    (Some(screening), found)
}

/// Of each post of a slope, the array above it and the part of it that the post carries.
fn carried(slope: &Slope) -> Vec<Option<(usize, Rect)>> {
    let mut carried = vec![None; slope.posts.len()];
    for (place, array) in slope.arrays.iter().enumerate() {
        let below =
            |&post: &usize| carried[post].is_none() && array.covers(Point::from(slope.posts[post].at));
        let below: Vec<usize> = (0..slope.posts.len()).filter(below).collect();
        let points: Vec<Point> = below.iter().map(|&post| Point::from(slope.posts[post].at)).collect();
        for (post, part) in below.into_iter().zip(tributary(&array.bounds(), &points)) {
            carried[post] = Some((place, part));
        }
    }
    carried
}

/// All that the screening of the post at place `i` needs, or what is missing.
fn ground<'a>(
    slope: &'a Slope,
    takeoff: &SlopeTakeoff,
    i: usize,
    carried: Option<(usize, Rect)>,
) -> Result<Ground<'a>, Unscreened> {
    let post = &slope.posts[i];
    let (array, tributary) = carried.ok_or(Unscreened::NoArray)?;
    let lags = post.assembly.lags.as_ref().ok_or(Unscreened::NoLags)?;
    let sheathing = slope.deck_thickness.ok_or(Unscreened::NoDeckThickness)?;
    let support = takeoff.posts[i].support.as_ref().ok_or(Unscreened::NoWood)?;
    let wood = Wood::below(slope, post, support)?;
    Ok(Ground { array, post, lags, sheathing, wood, tributary })
}
