//! Whether a laid job is the job at all: what a layout leaves alone.
use super::codes::{ARRAY, JOB};
use crate::geometry::SlopePoint;
use crate::model::{Array, Code, Job, Problem, Shift, Slope};
use crate::units::Length;

/// What differs between a job and the laid job besides posts and the places of arrays. Everything that a model holds
/// shows when it is written for debugging, and so nothing is forgotten when the model grows.
pub(super) fn same(job: &Job, laid: &Job) -> Vec<Problem> {
    let found = |code: Code, path: String, what: String| {
        let help = "a layout moves arrays with rails and sets the posts below them, and leaves all else";
        Problem::new(code, format!("the laid job has {what}"), help, path)
    };
    if without_slopes(job) != without_slopes(laid) || job.slopes.len() != laid.slopes.len() {
        let what = "another practice, other tiles, assemblies, prices or slopes".to_owned();
        return vec![found(JOB, String::new(), what)];
    }
    let mut all = Vec::new();
    for (place, (slope, laid)) in job.slopes.iter().zip(&laid.slopes).enumerate() {
        let path = format!("/slopes/{place}");
        if bare(slope) != bare(laid) {
            all.push(found(JOB, path.clone(), format!("another slope in place of `{}`", slope.name)));
        }
        if slope.arrays.len() != laid.arrays.len() {
            all.push(found(ARRAY, path.clone(), format!("more or fewer arrays on `{}`", slope.name)));
        }
        for (i, (array, laid)) in slope.arrays.iter().zip(&laid.arrays).enumerate() {
            let moves = array.rails.is_some();
            if modules(array, moves) != modules(laid, moves) {
                let what = format!("another array in place of `{}`", array.name);
                all.push(found(ARRAY, format!("{path}/arrays/{i}"), what));
            }
        }
    }
    all
}

fn without_slopes(job: &Job) -> String {
    let job = Job { name: String::new(), slopes: Vec::new(), findings: Vec::new(), ..job.clone() };
    format!("{job:?}")
}

fn bare(slope: &Slope) -> String {
    format!("{:?}", Slope { posts: Vec::new(), arrays: Vec::new(), ..slope.clone() })
}

/// An array without what the job alone says of it, and without its place where it may move.
fn modules(array: &Array, moves: bool) -> String {
    let at = if moves { SlopePoint { u: Length::ZERO, v: Length::ZERO } } else { array.at };
    format!("{:?}", Array { at, shift: Shift::default(), rails: None, ..array.clone() })
}
