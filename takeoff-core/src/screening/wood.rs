//! The wood that the lags of a post go into.
use schemars::JsonSchema;
use serde::Serialize;

use super::distances::Room;
use crate::deck::Support;
use crate::geometry::{Point, grid};
use crate::model::{Post, Rafters, Slope};
use crate::roof::outline_of;
use crate::units::Length;

/// A kind of member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Member {
    /// A rafter, running up the slope.
    Rafter,
    /// A blocking board between two rafters, lying along the eave.
    Blocking,
}

/// The wood below a post.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wood {
    pub(super) member: Member,
    pub(super) specific_gravity: f64,
    /// `None`: deeper than the lag reaches.
    pub(super) depth: Option<Length>,
    pub(super) room: Room,
}

/// Why a post is not screened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Unscreened {
    /// It lies below no array.
    NoArray,
    /// Its assembly does not say what its lags are.
    NoLags,
    /// The slope does not say how thick its sheathing is.
    NoDeckThickness,
    /// The slope gives no rafters, or not the specific gravity of their wood.
    NoWood,
    /// It is on a blocking board, and the slope does not say of what wood.
    NoBlocking,
    /// It is neither on a rafter nor between two.
    BesideTheRafters,
}

impl Wood {
    /// The wood below a post of the slope: its rafter, or the board that is put in.
    pub(super) fn below(slope: &Slope, post: &Post, support: &Support) -> Result<Wood, Unscreened> {
        let rafters = slope.rafters.as_ref().ok_or(Unscreened::NoWood)?;
        if support.on_rafter {
            let specific_gravity = rafters.specific_gravity.ok_or(Unscreened::NoWood)?;
            let off = (post.at.u - rafters.centre(support.rafter, post.at.v)).abs();
            let to_edge = grid(rafters.width) / 2 - grid(off);
            let room = Room { to_edge, to_end: to_rafter_end(slope, post) };
            return Ok(Wood { member: Member::Rafter, specific_gravity, depth: rafters.depth, room });
        }
        if support.board.is_none() {
            return Err(Unscreened::BesideTheRafters);
        }
        let board = slope.blocking.as_ref().ok_or(Unscreened::NoBlocking)?;
        let room = Room { to_edge: grid(board.width) / 2, to_end: to_board_end(rafters, post) };
        let (specific_gravity, depth) = (board.specific_gravity, Some(board.depth));
        Ok(Wood { member: Member::Blocking, specific_gravity, depth, room })
    }
}

/// From a post to the nearer end of its rafter: rafters reach at least as far as the slope's outline.
fn to_rafter_end(slope: &Slope, post: &Post) -> i64 {
    let at = Point::from(post.at);
    let ends = outline_of(slope).crossings_at(at.u);
    ends.iter().map(|v| (v - at.v).abs()).min().unwrap_or_default()
}

/// From a post to the nearer end of its blocking board, which runs from face to face of the rafters beside it.
fn to_board_end(rafters: &Rafters, post: &Post) -> i64 {
    let right = rafters.left_of(post.at, true);
    let to = |rafter: usize| {
        rafters.lines.get(rafter)?;
        let away = (rafters.centre(rafter, post.at.v) - post.at.u).abs();
        Some(grid(away) - grid(rafters.width) / 2)
    };
    right.checked_sub(1).and_then(to).into_iter().chain(to(right)).min().unwrap_or_default()
}
