//! The solution: a placement of every array with rails, slope by slope.
use std::collections::BTreeMap;

use super::intervals::Exclusion;
use super::objective::Objective;
use super::placement::{Placement, runners_up};
use super::post_cost::PostCostModel;
use super::rail::{FixedPost, IntervalCache, OtherPosts, Rail};
use super::replaced::{array_above, is_replaced};
use super::search::{Search, ShiftMap};
use crate::deck::support;
use crate::geometry::{Point, grid};
use crate::model::{Array, Job, Post, Rails, Slope};
use crate::roof::Site;

/// An array with its placement.
#[derive(Clone, Debug)]
pub(crate) struct SolvedArray {
    /// Index of the slope in the job.
    pub(crate) slope: usize,
    /// Index of the array on the slope.
    pub(crate) array: usize,
    pub(crate) placement: Placement,
    /// The cost elsewhere, if the detail asks for it.
    pub(crate) elsewhere: Option<Elsewhere>,
    /// The objective of the array left where it is, with its rails and posts at their best there; `None` if it has no
    /// layout there.
    pub(crate) baseline: Option<Objective>,
    /// Whether it had to keep away from arrays placed before it, so that together they may miss their optimum.
    pub(crate) laid_sequentially: bool,
}

/// The cost of an array at other shifts.
#[derive(Clone, Debug)]
pub(crate) struct Elsewhere {
    pub(crate) map: ShiftMap,
    /// The next best placements.
    pub(crate) runners_up: Vec<Placement>,
}

/// An array without a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Infeasible {
    /// Index of the slope in the job.
    pub(crate) slope: usize,
    /// Index of the array on the slope.
    pub(crate) array: usize,
}

/// The extent of a solution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Detail {
    /// The best placement of each array.
    Placement,
    /// Also its cost over all shifts, and the runners-up.
    Elsewhere,
}

/// Places all arrays with rails.
///
/// Each array is placed on its own, which is exact, since the rectangles that two arrays can sweep do not overlap. Where
/// posts of two arrays come nearer to each other than their least distance, the arrays of that slope are placed again one
/// after the other, each away from the posts of those before; together they may then miss their optimum.
pub(crate) fn solve(job: &Job, detail: Detail) -> Result<Vec<SolvedArray>, Infeasible> {
    let mut all = Vec::new();
    for (index, slope) in job.slopes.iter().enumerate() {
        let solver = SlopeSolver { job, index, slope, site: Site::of(slope, &job.practice) };
        let mut solved = solver.solve(detail, false)?;
        if solver.posts_are_too_near(&solved) {
            solved = solver.solve(detail, true)?;
        }
        all.extend(solved);
    }
    Ok(all)
}

struct SlopeSolver<'a> {
    job: &'a Job,
    /// Index of the slope in the job.
    index: usize,
    slope: &'a Slope,
    site: Site<'a>,
}

impl<'a> SlopeSolver<'a> {
    fn solve(&self, detail: Detail, sequentially: bool) -> Result<Vec<SolvedArray>, Infeasible> {
        let model = |(_, _, rails): (usize, &'a Array, &'a Rails)| {
            (rails.assembly.name.as_str(), PostCostModel::new(self.job, &self.site, &rails.assembly))
        };
        let models: BTreeMap<&str, PostCostModel> = self.arrays_with_rails().map(model).collect();
        let mut caches: BTreeMap<&str, IntervalCache> = BTreeMap::new();
        let mut solved: Vec<SolvedArray> = Vec::new();
        for (array_index, array, rails) in self.arrays_with_rails() {
            let infeasible = Infeasible { slope: self.index, array: array_index };
            let assembly = rails.assembly.name.as_str();
            let (Some(model), Some(rafters)) = (models.get(assembly), &self.slope.rafters) else {
                return Err(infeasible);
            };
            let mut posts = self.posts_that_stay(array_index);
            if sequentially {
                posts.extend(solved.iter().flat_map(|before| before.placement.posts()));
            }
            // Between posts of two arrays the greater of both least distances applies.
            let rails_in_force =
                self.arrays_with_rails().filter(|(other, ..)| sequentially || *other == array_index);
            let distance = rails_in_force.map(|(.., rails)| grid(rails.least_distance)).max();
            let exclusion = Exclusion { posts: &posts, distance: distance.unwrap_or_default() };
            let others = OtherPosts { fixed: &self.fixed_posts_below(array_index), exclusion };
            let cache = caches.entry(assembly).or_default();
            let all_rails = Rail::of_array(array, rails, rafters, model, &others, cache);
            let mut search = Search::new(array, rails, all_rails);
            let best = search.best();
            let placement = search.place_best(&best, model.graduations).ok_or(infeasible)?;
            let elsewhere = (detail == Detail::Elsewhere).then(|| {
                let (map, shifts) = ShiftMap::of_search(&mut search);
                Elsewhere { map, runners_up: runners_up(&mut search, shifts, &placement, model.graduations) }
            });
            let baseline = search.evaluate_best_phase(Point::from(array.at).u, 0);
            solved.push(SolvedArray {
                slope: self.index,
                array: array_index,
                placement,
                elsewhere,
                baseline: baseline.map(|shift| shift.objective),
                laid_sequentially: sequentially,
            });
        }
        Ok(solved)
    }

    fn arrays_with_rails(&self) -> impl Iterator<Item = (usize, &'a Array, &'a Rails)> {
        let arrays = self.slope.arrays.iter().enumerate();
        arrays.filter_map(|(index, array)| Some((index, array, array.rails.as_ref()?)))
    }

    /// Fixed posts below an array, each with its cost.
    fn fixed_posts_below(&self, array: usize) -> Vec<FixedPost> {
        let posts = self.slope.posts.iter().enumerate();
        let fixed = posts.filter(|(_, post)| post.fixed && array_above(self.slope, post) == Some(array));
        fixed.map(|(index, post)| FixedPost { index, at: post.at, money: self.cost_of_fixed(post) }).collect()
    }

    /// Cost of a fixed post and its board, in millionths of the currency.
    fn cost_of_fixed(&self, post: &Post) -> i64 {
        let model = PostCostModel::new(self.job, &self.site, &post.assembly);
        let at = Point::from(post.at);
        let board = support(&self.site, post).and_then(|support| support.board);
        let board = board.map_or(0, |length| model.board_cost(length));
        Objective::from_money(model.money(&model.work(at), at)).plus_money(board).money
    }

    /// The places of posts that stay, those below the array excepted.
    fn posts_that_stay(&self, array: usize) -> Vec<Point> {
        let stays =
            |post: &&Post| !is_replaced(self.slope, post) && array_above(self.slope, post) != Some(array);
        self.slope.posts.iter().filter(stays).map(|post| Point::from(post.at)).collect()
    }

    /// Whether posts of two arrays are nearer to each other than the least distance of either.
    fn posts_are_too_near(&self, solved: &[SolvedArray]) -> bool {
        let least_distance = |solved: &SolvedArray| {
            self.slope.arrays[solved.array].rails.as_ref().map_or(0, |rails| grid(rails.least_distance))
        };
        solved.iter().enumerate().any(|(i, one)| {
            solved[i + 1..].iter().any(|other| {
                let theirs = other.placement.posts();
                let distance = least_distance(one).max(least_distance(other));
                let exclusion = Exclusion { posts: &theirs, distance };
                distance > 0 && one.placement.posts().into_iter().any(|post| !exclusion.permits(post))
            })
        })
    }
}
