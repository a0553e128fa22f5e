//! The reasons that an array has no layout: an irreducible infeasible set of limits, and the least relaxation of each.
use super::super::graduations;
use crate::layout::bisection::greatest;
use crate::layout::result::Constraint;
use crate::layout::solve::{Detail, Infeasible, solve};
use crate::model::Code;
use crate::model::{Job, Problem};
use crate::units::Length;

/// The size of the largest sets that are tried, unless more limits than that are in every infeasible set. Beyond it the
/// message names all limits in force.
const LARGEST_SET: usize = 4;

/// The most steps of 1/16 in or 1 mm by which a limit is relaxed.
const MOST_STEPS: i64 = 4096;

/// The problem of an array without a layout.
///
/// # Rule
///
/// A set of limits is infeasible if there is no layout even with all other limits removed. The message names the smallest
/// such set, the first of equally small ones in the order of [`Constraint::ALL`]; being smallest it is irreducible. The
/// help gives, for each length in the set, its least relaxation in whole 1/16 in or millimetres with which there is a
/// layout, all other limits in force.
pub(crate) fn infeasibility(job: &Job, infeasible: Infeasible) -> Problem {
    let alone = with_one_array(job, infeasible);
    let array = &job.slopes[infeasible.slope].arrays[infeasible.array];
    let in_force: Vec<Constraint> =
        Constraint::ALL.into_iter().filter(|limit| limit.removed(&alone).is_some()).collect();
    let who = format!("the array `{}` on `{}` has no layout", array.name, job.slopes[infeasible.slope].name);
    let (message, help) = match infeasible_set(&alone, &in_force) {
        Some(set) => {
            let names: Vec<String> = set.iter().map(|limit| limit.shown(&alone)).collect();
            let together = if names.len() == 1 { "can't be kept" } else { "can't be kept together" };
            let relaxations: Vec<String> =
                set.iter().filter_map(|limit| least_relaxation(&alone, *limit)).collect();
            let help = if relaxations.is_empty() {
                "relaxing one of them is not enough: move the array, or measure its rafters again".to_owned()
            } else {
                relaxations.join(", or ")
            };
            (format!("{who}: {} {together}", listed(&names)), help)
        }
        None => (
            format!(
                "{who}, even without any limit: fewer than two rafters below its rails have tile over them"
            ),
            "check the place of the array, the rafters and the courses".to_owned(),
        ),
    };
    let path = format!("/slopes/{}/arrays/{}/rails", infeasible.slope, infeasible.array);
    Problem::new(Code::NoLayout, message, help, path)
}

/// The job with rails on this array only.
fn with_one_array(job: &Job, infeasible: Infeasible) -> Job {
    let mut job = job.clone();
    for (slope_index, slope) in job.slopes.iter_mut().enumerate() {
        for (array_index, array) in slope.arrays.iter_mut().enumerate() {
            if (slope_index, array_index) != (infeasible.slope, infeasible.array) {
                array.rails = None;
            }
        }
    }
    job
}

fn is_feasible(job: &Job) -> bool {
    solve(job, Detail::Placement).is_ok()
}

/// The smallest infeasible set of the limits in force; `None` if there is no layout even without all of them.
fn infeasible_set(job: &Job, in_force: &[Constraint]) -> Option<Vec<Constraint>> {
    let is_feasible_with = |kept: &[Constraint]| {
        let removed = in_force.iter().filter(|limit| !kept.contains(limit));
        is_feasible(&removed.fold(job.clone(), |job, limit| limit.removed(&job).unwrap_or(job)))
    };
    if !is_feasible_with(&[]) {
        return None;
    }
    // A limit whose removal alone gives a layout is in every infeasible set: only sets with all such limits are tried.
    let others = |one: &Constraint| in_force.iter().copied().filter(|other| other != one).collect::<Vec<_>>();
    let needed: Vec<Constraint> =
        in_force.iter().copied().filter(|one| is_feasible_with(&others(one))).collect();
    let of_size = |size: usize| {
        let sets = subsets(in_force, size).into_iter();
        let mut sets = sets.filter(|set| needed.iter().all(|one| set.contains(one)));
        sets.find(|set| !is_feasible_with(set))
    };
    let (least, most) = (needed.len().max(1), needed.len().max(LARGEST_SET));
    Some((least..=most).find_map(of_size).unwrap_or_else(|| in_force.to_vec()))
}

/// All subsets of a size, in the order of the list.
fn subsets(list: &[Constraint], size: usize) -> Vec<Vec<Constraint>> {
    match (list, size) {
        (_, 0) => vec![Vec::new()],
        ([], _) => Vec::new(),
        ([first, rest @ ..], _) => {
            let with = subsets(rest, size - 1).into_iter().map(|mut set| {
                set.insert(0, *first);
                set
            });
            with.chain(subsets(rest, size)).collect()
        }
    }
}

/// The least relaxation of a limit that gives a layout, in words; `None` if none does.
fn least_relaxation(job: &Job, limit: Constraint) -> Option<String> {
    let step = graduations::length(job.display);
    let relaxed = |steps: i64| limit.relaxed(job, Length::from_nm(steps * step.nm()));
    let suffices = |steps: i64| relaxed(steps).is_some_and(|job| is_feasible(&job));
    if !limit.is_length() {
        return suffices(1).then(|| limit.removal_in_words().to_owned());
    }
    let mut enough = 1;
    while !suffices(enough) {
        enough *= 2;
        if enough > MOST_STEPS {
            return None;
        }
    }
    let least = greatest(enough / 2, enough, |steps| !suffices(steps)) + 1;
    let by = Length::from_nm(least * step.nm());
    Some(limit.relaxation_in_words(&relaxed(least)?, job.display.length(by)))
}

/// Names in a row, the last one after "and".
fn listed(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}
