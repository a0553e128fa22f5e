//! Lays all arrays of a job that have rails.
use std::collections::BTreeMap;

use super::graduations::Graduations;
use super::intervals::Exclusion;
use super::objective::Objective;
use super::placement::Placement;
use super::post_cost::PostCostModel;
use super::rail::{FixedPost, IntervalCache, OtherPosts, Rail};
use super::search::ShiftMap;
use super::search::{ScoredShift, Search};
use crate::deck::support;
use crate::geometry::{Point, grid};
use crate::model::{Array, Job, Post, Rails, Slope};
use crate::roof::Site;
use crate::units::Length;

/// An array that is laid.
#[derive(Clone, Debug)]
pub(crate) struct SolvedArray {
    /// Places of the slope in the job, and of the array on the slope.
    pub(crate) slope: usize,
    pub(crate) array: usize,
    pub(crate) placed: Placement,
    /// The next best ones, each of another cost.
    pub(crate) runners_up: Vec<Placement>,
    pub(crate) map: Option<ShiftMap>,
    /// Its score where it is, its rails and posts at their best there.
    pub(crate) baseline: Option<Objective>,
    /// Whether it had to keep away from arrays that were laid before it, so that all of them together may not be at
    /// their least.
    pub(crate) laid_sequentially: bool,
}

/// An array that has no layout: places of the slope in the job and of the array on the slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Infeasible {
    pub(crate) slope: usize,
    pub(crate) array: usize,
}

/// What is looked for besides the best place.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Wanted {
    /// What the array costs elsewhere: its map, and the runners-up on it.
    pub(crate) map: bool,
}

/// Lays the arrays, slope by slope. Arrays are laid apart from each other; where posts of two come nearer to each other
/// than they may, those of the slope are laid once more one after the other, each keeping away from those before.
pub(crate) fn solve(job: &Job, wanted: Wanted) -> Result<Vec<SolvedArray>, Infeasible> {
    let mut all = Vec::new();
    for (place, slope) in job.slopes.iter().enumerate() {
        let on_slope = SlopeSolver::of(job, place, slope);
        let mut laid = on_slope.solve(wanted, false)?;
        if on_slope.come_too_near(&laid) {
            laid = on_slope.solve(wanted, true)?;
        }
        all.extend(laid);
    }
    Ok(all)
}

/// Whether a layout replaces a post: it lies below an array with rails and is not fixed.
pub(crate) fn is_replaced(slope: &Slope, post: &Post) -> bool {
    !post.fixed && below(slope, post).is_some()
}

/// The array with rails that a post lies below.
fn below(slope: &Slope, post: &Post) -> Option<usize> {
    let covers = |array: &Array| array.rails.is_some() && array.covers(Point::from(post.at));
    slope.arrays.iter().position(covers)
}

struct SlopeSolver<'a> {
    job: &'a Job,
    place: usize,
    slope: &'a Slope,
    site: Site<'a>,
}

impl<'a> SlopeSolver<'a> {
    fn of(job: &'a Job, place: usize, slope: &'a Slope) -> SlopeSolver<'a> {
        SlopeSolver { job, place, slope, site: Site::of(slope, &job.practice) }
    }

    fn railed(&self) -> impl Iterator<Item = (usize, &'a Array, &'a Rails)> {
        let arrays = self.slope.arrays.iter().enumerate();
        arrays.filter_map(|(place, array)| Some((place, array, array.rails.as_ref()?)))
    }

    fn solve(&self, wanted: Wanted, sequentially: bool) -> Result<Vec<SolvedArray>, Infeasible> {
        let models: BTreeMap<&str, PostCostModel> = self
            .railed()
            .map(|(_, _, rails)| {
                (rails.assembly.name.as_str(), PostCostModel::new(self.job, &self.site, &rails.assembly))
            })
            .collect();
        let mut known: BTreeMap<&str, IntervalCache> = BTreeMap::new();
        let mut laid: Vec<SolvedArray> = Vec::new();
        for (place, array, rails) in self.railed() {
            let infeasibility = Infeasible { slope: self.place, array: place };
            let name = rails.assembly.name.as_str();
            let (Some(model), Some(rafters)) = (models.get(name), &self.slope.rafters) else {
                return Err(infeasibility);
            };
            let mut stay = self.posts_that_stay(place);
            if sequentially {
                let before = laid.iter().flat_map(|laid| positions(&laid.placed));
                stay.extend(before);
            }
            // Posts of two arrays keep the greater of both distances.
            let distances = self.railed().filter(|(other, ..)| sequentially || *other == place);
            let least = distances.map(|(.., rails)| grid(rails.least_distance)).max().unwrap_or_default();
            let exclusion = Exclusion { posts: &stay, least };
            let others = OtherPosts { fixed: &self.fixed_below(place), exclusion };
            let of_name = known.entry(name).or_default();
            let rails_of = Rail::of_array(array, rails, rafters, model, &others, of_name);
            let mut search = Search::new(array, rails, rails_of);
            let mut found = search.best();
            let best = found.first().ok_or(infeasibility)?.objective;
            found.truncate(found.partition_point(|found| found.objective == best));
            let placed = search.place_best(&found, model.graduations).ok_or(infeasibility)?;
            let (map, elsewhere) = if wanted.map { Some(ShiftMap::of(&mut search)) } else { None }.unzip();
            let runners_up =
                elsewhere.map(|found| runners_up(&mut search, found, &placed, model.graduations));
            let runners_up = runners_up.unwrap_or_default();
            let baseline =
                search.evaluate_best_phase(Point::from(array.at).u, 0).map(|found| found.objective);
            let slope = self.place;
            laid.push(SolvedArray {
                slope,
                array: place,
                placed,
                runners_up,
                map,
                baseline,
                laid_sequentially: sequentially,
            });
        }
        Ok(laid)
    }

    /// Fixed posts below an array.
    fn fixed_below(&self, array: usize) -> Vec<FixedPost> {
        let posts = self.slope.posts.iter().enumerate();
        let fixed = posts.filter(|(_, post)| post.fixed && below(self.slope, post) == Some(array));
        let cost = |post: &Post| {
            let model = PostCostModel::new(self.job, &self.site, &post.assembly);
            let at = Point::from(post.at);
            let work = model.work(at);
            let board = support(&self.site, post).1.and_then(|board| Length::nearest(board.length_mm * 1e6));
            model.base(&work).money
                + work.patch.map_or(0, |sheet| model.patch_cost(&sheet, at))
                + board.map_or(0, |length| model.board(length))
        };
        fixed.map(|(place, post)| FixedPost { place, at: post.at, money: cost(post) }).collect()
    }

    /// Posts that are not replaced, those below the array aside.
    fn posts_that_stay(&self, array: usize) -> Vec<Point> {
        let stay = self
            .slope
            .posts
            .iter()
            .filter(|post| !is_replaced(self.slope, post) && below(self.slope, post) != Some(array));
        stay.map(|post| Point::from(post.at)).collect()
    }

    /// Whether posts of two arrays are nearer to each other than either's rails ask for.
    fn come_too_near(&self, laid: &[SolvedArray]) -> bool {
        let posts = |laid: &SolvedArray| positions(&laid.placed);
        let least = |laid: &SolvedArray| {
            self.slope.arrays[laid.array].rails.as_ref().map_or(0, |rails| grid(rails.least_distance))
        };
        laid.iter().enumerate().any(|(i, one)| {
            laid[i + 1..].iter().any(|other| {
                let theirs = posts(other);
                let exclusion = Exclusion { posts: &theirs, least: least(one).max(least(other)) };
                exclusion.least > 0 && posts(one).into_iter().any(|post| !exclusion.allows(post))
            })
        })
    }
}

/// The next best of the places on an array's map, each with some post on another foot or in another span than those
/// before it.
fn runners_up(
    search: &mut Search,
    mut found: Vec<ScoredShift>,
    best: &Placement,
    graduations: Graduations,
) -> Vec<Placement> {
    found.sort_by_key(|found| found.objective);
    found.dedup_by_key(|found| found.objective);
    let mut runners_up: Vec<Placement> = Vec::new();
    for other in found {
        let Some(other) = search.place_best(&[other], graduations) else { continue };
        if runners_up.iter().chain([best]).all(|known| other.differs_from(known)) {
            runners_up.push(other);
            if runners_up.len() == RUNNERS_UP {
                break;
            }
        }
    }
    runners_up
}

/// How many runners-up are told of each array.
const RUNNERS_UP: usize = 3;

/// Where the posts of a laid array stand.
pub(crate) fn positions(placed: &Placement) -> Vec<Point> {
    let on_rail = |rail: &super::placement::RailPlacement| {
        let v = rail.v;
        rail.posts.iter().map(move |&(_, u)| Point::new(u, v)).collect::<Vec<_>>()
    };
    placed.rails.iter().flat_map(on_rail).collect()
}
