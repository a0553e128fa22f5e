//! The wood under a post: its rafter, or a blocking board between two rafters.
use super::codes::NO_RAFTER_BESIDE;
use crate::geometry::{grid, half};
use crate::model::{Post, Problem, Rafters};
use crate::roof::Site;
use crate::units::Length;

/// The wood under a post: the nearest rafter, and the board that is put in where that one is out of reach.
///
/// `None` where the job gives no rafters; no board where the post lies outside the rafters ([`without_rafter`]).
///
/// # Rule
///
/// The lag is on the rafter when the post's point is no farther from its centre line than half the rafter's
/// width less the lag's least edge distance. Otherwise a board is put in between the rafters beside the post, as
/// long as the clear distance between them. (A post straight over a rafter that is too narrow for its lags gets
/// the board on the right.)
///
/// # Example
///
/// Rafters 1 1/2 in wide at 32 and 56 in, edge distance 1/2 in: a post up to 1/4 in off a centre line is on the
/// rafter. At 50 in it is 6 in off, and the board is 56 − 32 − 1 1/2 = 22 1/2 in long.
pub fn support(site: &Site, post: &Post) -> Option<Support> {
    let rafters = site.slope.rafters.as_ref()?;
    let rafter = nearest(rafters, post)?;
    let off_centre = post.at.u - rafters.centre(rafter, post.at.v);
    let on_rafter = grid(off_centre.abs()) <= half(rafters.width) - grid(post.assembly.lag_edge_distance);
    let board = if on_rafter { None } else { clear_bay(rafters, post) };
    Some(Support { rafter, off_centre, on_rafter, board })
}

/// A finding where a post is on no rafter and has none on one side to hold a board.
pub fn without_rafter(post: &Post, support: &Support) -> Option<Problem> {
    (!support.on_rafter && support.board.is_none()).then(|| {
        let message =
            format!("`{}` lies beyond the rafters: no board can be put in between two of them", post.name);
        let help = "move the post onto a rafter, or survey the framing there";
        Problem::new(NO_RAFTER_BESIDE, message, help, &post.path)
    })
}

/// The rafter nearest to a post; of two equally near the left one.
fn nearest(rafters: &Rafters, post: &Post) -> Option<usize> {
    let right = rafters.left_of(post.at, false);
    let left = right.checked_sub(1);
    let near = left.into_iter().chain((right < rafters.lines.len()).then_some(right));
    near.min_by_key(|&rafter| (rafters.centre(rafter, post.at.v) - post.at.u).abs())
}

/// The clear distance between the rafters beside a post.
fn clear_bay(rafters: &Rafters, post: &Post) -> Option<Length> {
    let right = rafters.left_of(post.at, true);
    let left = right.checked_sub(1)?;
    rafters.lines.get(right)?;
    let clear = rafters.clear_between(left, right, post.at.v);
    (clear > Length::ZERO).then_some(clear)
}

/// The wood under a post.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Support {
    /// The nearest rafter, counted from 0 on the left.
    pub rafter: usize,
    /// Post's point less the rafter's centre line.
    pub off_centre: Length,
    /// Whether the lag lands within tolerance.
    pub on_rafter: bool,
    /// The clear distance between the rafters beside the post, which is the length of the board put in between them;
    /// `None` where none is.
    pub board: Option<Length>,
}
