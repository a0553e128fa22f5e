//! The layout of one array, as the document shows it.
use std::collections::BTreeMap;

use crate::geometry::{Point, grid, to_mm};
use crate::layout::objective::Objective;
use crate::layout::placement::{Placement, RailPlacement};
use crate::layout::post_names::post_names;
use crate::layout::rail::Anchor;
use crate::layout::result::{ArrayLayout, RailLayout, RailPost, RunnerUp, Unmoved};
use crate::layout::solve::{Elsewhere, SolvedArray};
use crate::model::{Array, Job};
use crate::slope_takeoff::PostTakeoff;
use crate::takeoff::Takeoff;
use crate::units::Currency;

/// The layout of a solved array; `taken` is the takeoff of the laid-out job.
pub(crate) fn array_layout(
    job: &Job,
    solved: &SolvedArray,
    taken: &Takeoff,
    currency: &Currency,
) -> ArrayLayout {
    let slope = &job.slopes[solved.slope];
    let array = &slope.arrays[solved.array];
    let posts = taken.slopes[solved.slope].posts.iter();
    let rows: BTreeMap<&str, &PostTakeoff> = posts.map(|post| (post.name.as_str(), post)).collect();
    let writer = Writer { array, origin: Point::from(array.at), rows, currency };
    let Placement { objective, at, rails, spare_margin } = &solved.placement;
    let names = post_names(slope, &array.name, rails);
    let rails = rails.iter().zip(names).enumerate();
    let (map, runners_up) = match &solved.elsewhere {
        Some(Elsewhere { map, runners_up }) => (Some(map.clone()), &runners_up[..]),
        None => (None, &[][..]),
    };
    ArrayLayout {
        slope: slope.name.clone(),
        array: array.name.clone(),
        right_mm: to_mm(at.u - writer.origin.u),
        up_mm: to_mm(at.v - writer.origin.v),
        u_mm: to_mm(at.u),
        v_mm: to_mm(at.v),
        rails: rails.map(|(number, (rail, names))| writer.rail(number, at, rail, names)).collect(),
        additive_cost: currency.nearest(objective.amount()),
        failing: objective.failing,
        thin: objective.narrow,
        least_margin_mm: job.practice.least_margin.mm() + to_mm(*spare_margin),
        unmoved: solved.baseline.map(|baseline| Unmoved {
            additive_cost: currency.nearest(baseline.amount()),
            failing: baseline.failing,
            thin: baseline.narrow,
        }),
        yielded: solved.laid_sequentially,
        runners_up: runners_up.iter().map(|placement| writer.runner_up(placement, objective)).collect(),
        map,
    }
}

struct Writer<'a> {
    array: &'a Array,
    /// The array's corner in the job.
    origin: Point,
    /// Rows of the takeoff, by post.
    rows: BTreeMap<&'a str, &'a PostTakeoff>,
    currency: &'a Currency,
}

impl Writer<'_> {
    fn rail(&self, number: usize, at: &Point, rail: &RailPlacement, names: Vec<String>) -> RailLayout {
        let windows = self.array.rails.as_ref().map_or(0, |rails| rails.clamps.len()).max(1);
        let pitch = grid(self.array.module_height + self.array.row_gap);
        let posts = rail.posts.iter().zip(names);
        RailLayout {
            rail: number as u64 + 1,
            v_mm: to_mm(rail.v),
            clamp_mm: to_mm(rail.v - at.v - (number / windows) as i64 * pitch),
            additive_cost: self.currency.nearest(rail.objective.amount()),
            posts: posts.filter_map(|(&(anchor, u), name)| self.post(anchor, u, name)).collect(),
        }
    }

    fn post(&self, anchor: Anchor, u: i64, name: String) -> Option<RailPost> {
        let row = self.rows.get(name.as_str())?;
        Some(RailPost {
            u_mm: to_mm(u),
            rafter: anchor.rafter().map(|rafter| rafter as u64 + 1),
            on_board: matches!(anchor, Anchor::Bay(_)),
            situation: row.situation,
            method: row.deck.method.kind(),
            name,
        })
    }

    fn runner_up(&self, placement: &Placement, best: &Objective) -> RunnerUp {
        let objective = &placement.objective;
        RunnerUp {
            right_mm: to_mm(placement.at.u - self.origin.u),
            up_mm: to_mm(placement.at.v - self.origin.v),
            rails_v_mm: placement.rails.iter().map(|rail| to_mm(rail.v)).collect(),
            posts: placement.posts().len() as u64,
            additive_cost: self.currency.nearest(objective.amount()),
            more: self.currency.nearest(objective.amount() - best.amount()),
            failing: objective.failing,
            thin: objective.narrow,
        }
    }
}
