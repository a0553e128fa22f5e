//! The nearest better place for a post, up or down its rafter.
use super::margin::Others;
use super::thresholds::{Axis, thresholds};
use super::{Mover, Situation, State};
use crate::geometry::{Point, grid, whole};
use crate::units::Length;

/// A better place.
#[derive(Clone, Copy, Debug)]
pub struct Better {
    /// Where.
    pub at: Point,
    /// How far up the slope (negative: down).
    pub up: Length,
    /// What the post meets there.
    pub state: State,
}

/// How good a place is, best first: fewest tiles cut, then no notch.
type Rank = (u32, bool);

fn rank(state: &State) -> Rank {
    (state.tiles, state.not_holes > 0)
}

/// The nearest better place for a post that cuts more than one tile, severs one, or fails a check.
///
/// # Rule
///
/// Along its rafter, moved by whole `step`s of at most `window` each way: the place with the fewest tiles cut, with
/// no notch if possible, where all checks of the tile flashing pass and no tile is severed; of equals the nearest;
/// on a tie up-slope. Places without tile, outside the outline, within a setback, or so near to another post that the openings would
/// be judged as one, do not count.
pub fn nearest(mover: &Mover, at: Point, step: Length, window: Length, others: &Others) -> Option<Better> {
    let here = mover.state(at);
    let good_here = here.passes() && here.severed == 0 && here.situation != Situation::None;
    if good_here && here.tiles == 1 {
        return None;
    }
    let step = grid(step);
    let most = grid(window) / step;
    let mut best: Option<(Rank, Better)> = None;
    for count in steps_to_look_at(mover, at, step, most) {
        let place = Axis::V.moved(at, count * step);
        let state = mover.state(place);
        let better = (rank(&state), Better { at: place, up: whole(count * step), state });
        let beats_best = best.as_ref().is_none_or(|(rank, _)| better.0 < *rank);
        let beats_here = !good_here || better.0 < rank(&here);
        if beats_best && beats_here && is_allowed(mover, place, &state, others) {
            let perfect = better.0 == (1, false);
            best = Some(better);
            if perfect {
                break;
            }
        }
    }
    best.map(|(_, better)| better)
}

fn is_allowed(mover: &Mover, place: Point, state: &State, others: &Others) -> bool {
    let web = grid(mover.site.practice.least_web);
    state.situation != Situation::None
        && state.severed == 0
        && state.passes()
        && mover.site.allows_post_at(place, mover.assembly)
        && !others.any_near(&mover.opening_at(place).bounds(), web)
        && mover.stands_alone(place)
}

/// The numbers of steps worth a look, nearest first and up before down: the state is constant between two
/// thresholds, so the whole steps next to each threshold are enough.
fn steps_to_look_at(mover: &Mover, at: Point, step: i64, most: i64) -> Vec<i64> {
    let mut counts: Vec<i64> = thresholds(mover, at, Axis::V, -most * step, most * step)
        .into_iter()
        .flat_map(|by| [by.div_euclid(step), by.div_euclid(step) + 1, (by + 2).div_euclid(step) + 1])
        .filter(|count| (-most..=most).contains(count) && *count != 0)
        .collect();
    counts.sort_unstable_by_key(|&count| (count.abs(), count < 0));
    counts.dedup();
    counts
}
