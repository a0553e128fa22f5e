//! The additive cost: the sum over the posts of the cost of each one alone.
use super::cost::Cost;
use super::takeoff_cost::cost_with_staples;
use crate::deck::Patch;
use crate::model::{Job, Post, Problems, Slope};
use crate::takeoff::takeoff;

/// The additive cost of a job: the sum over its posts of the cost of each one alone on the roof. It is the value that a
/// layout minimises.
///
/// # Rule
///
/// [`cost`](fn@super::cost) of each post alone, with perimeter ÷ spacing staples a patch instead of whole staples.
///
/// # Errors
///
/// Those of [`cost`](fn@super::cost) and of [`takeoff`](fn@takeoff).
///
/// # Example
///
/// A patch 18 × 33 in, 102 in around, takes 25.5 staples 4 in apart: with felt at 0.40 a square foot and staples at 2.00
/// a hundred it costs 4.125 · 0.40 + 25.5 · 0.02 = 2.16. Two posts that share a patch pay for two.
pub fn additive(job: &Job) -> Result<Cost, Problems> {
    let staples = |patch: &Patch, spacing_mm: f64| patch.perimeter().mm() / spacing_mm;
    let mut sum = Cost::default();
    let without_slopes = SinglePostJob::without_slopes(job);
    for slope in &job.slopes {
        let mut single = SinglePostJob::new(&without_slopes, slope);
        for post in &slope.posts {
            let job = single.with(post);
            sum.add(cost_with_staples(job, &takeoff(job)?, staples)?);
        }
    }
    Ok(sum)
}

/// A job with one slope and one post on it. One such job serves all posts of a slope in turn, so that the time for all
/// of them grows with their number and not with its square.
struct SinglePostJob(Job);

impl SinglePostJob {
    /// What a job with one post keeps of a job besides its slope.
    fn without_slopes(job: &Job) -> Job {
        Job { slopes: Vec::new(), screening: None, findings: Vec::new(), ..job.clone() }
    }

    fn new(without_slopes: &Job, slope: &Slope) -> SinglePostJob {
        let slope = Slope { posts: Vec::new(), arrays: Vec::new(), ..slope.clone() };
        SinglePostJob(Job { slopes: vec![slope], ..without_slopes.clone() })
    }

    /// The job with this post in place of the one before.
    fn with(&mut self, post: &Post) -> &Job {
        for slope in &mut self.0.slopes {
            slope.posts.clear();
            slope.posts.push(post.clone());
        }
        &self.0
    }
}
