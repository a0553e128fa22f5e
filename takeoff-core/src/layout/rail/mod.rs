//! A rail: its reach up and down the slope, its anchors, and the cheapest posts along it.
//!
//! [`setup`] builds the rails of an array. [`candidates`] lists the posts that can stand on a rail at one height,
//! [`limits`] holds spans, overhangs and zones, and [`shortest_path`] picks the cheapest posts. [`height_table`] does so at
//! each height that can be best.
mod anchor;
mod candidates;
mod height_table;
mod limits;
mod setup;
mod shortest_path;

pub(crate) use anchor::Anchor;
pub(crate) use candidates::CandidatePost;
pub(crate) use height_table::{HeightTable, least_objective};
pub(crate) use setup::{FixedPost, IntervalCache, OtherPosts};
pub(crate) use shortest_path::CheapestPath;

use std::rc::Rc;

use crate::geometry::Point;
use crate::layout::intervals::FeasibleInterval;
use crate::layout::objective::Objective;
use crate::layout::post_cost::PostCostModel;
use crate::model::{Rafters, Rails};
use crate::units::Length;

/// A rail of an array. Heights and widths are in grid steps.
pub(crate) struct Rail<'a> {
    pub(crate) rails: &'a Rails,
    pub(crate) rafters: &'a Rafters,
    pub(crate) model: &'a PostCostModel<'a>,
    /// Its index among the array's rails, from the lowest up.
    pub(crate) number: usize,
    /// Lower end of its clamp window, with the array where the job has it.
    pub(crate) from: i64,
    /// Upper end of its clamp window, with the array where the job has it.
    pub(crate) to: i64,
    /// Its lowest height over all shifts of the array; with a fixed post, the height of that post.
    pub(crate) low: i64,
    /// Its highest height over all shifts of the array; with a fixed post, the height of that post.
    pub(crate) high: i64,
    pub(crate) lines: Vec<AnchorLine>,
}

/// An anchor, and the intervals along it in which a post can stand.
pub(crate) struct AnchorLine {
    pub(crate) anchor: Anchor,
    /// Whether its `u`, or the length of its board, varies with the height.
    pub(crate) is_crooked: bool,
    /// Its `u` at the rail's lowest height.
    u: i64,
    pub(crate) intervals: Rc<Vec<FeasibleInterval>>,
}

impl Rail<'_> {
    /// The `u` of a line at a height.
    pub(crate) fn u_at(&self, line: usize, v: i64) -> i64 {
        let AnchorLine { anchor, is_crooked, u, .. } = &self.lines[line];
        if *is_crooked { anchor.u_at(self.rafters, v) } else { *u }
    }

    /// The interval of a line at a height; `None` outside all of them.
    pub(crate) fn interval_at(&self, line: usize, v: i64) -> Option<&FeasibleInterval> {
        let intervals = &self.lines[line].intervals;
        let interval = intervals.get(intervals.partition_point(|interval| interval.to < v))?;
        (interval.from <= v).then_some(interval)
    }

    /// The objective of a post on a line at a height in one of its intervals.
    pub(crate) fn objective(&self, line: usize, interval: &FeasibleInterval, v: i64) -> Objective {
        let objective = interval.objective(self.model, Point::new(self.u_at(line, v), v));
        let Some(left) = self.board_right_of(self.lines[line].anchor) else { return objective };
        let clear = self.rafters.clear_between(left, left + 1, Length::from_nm(v / 2));
        if clear > Length::ZERO { objective.plus_money(self.model.board_cost(clear)) } else { objective }
    }

    /// The rafter on the left of the board under a post; `None` without a board. A post on a rafter too narrow for its
    /// lags takes a board on the right of it.
    fn board_right_of(&self, anchor: Anchor) -> Option<usize> {
        let edges = self.rails.assembly.lag_edge_distance;
        match anchor {
            Anchor::Bay(left) => Some(left),
            Anchor::Rafter(rafter) if edges + edges > self.rafters.width => {
                Some(rafter).filter(|_| rafter + 1 < self.rafters.lines.len())
            }
            _ => None,
        }
    }

    /// Whether the cost within an interval may rise with the height: boards between crooked rafters grow longer.
    pub(crate) fn cost_may_rise(&self) -> bool {
        (0..self.lines.len()).any(|line| self.board_varies(line))
    }

    /// Whether the length of a line's board varies with the height.
    pub(crate) fn board_varies(&self, line: usize) -> bool {
        let AnchorLine { anchor, is_crooked, .. } = &self.lines[line];
        *is_crooked && self.board_right_of(*anchor).is_some()
    }
}
