//! Why an array has no layout: the smallest set of constraints that clash, and what would have to give.
use super::lay::{NoLayout, Wanted, lay};
use super::result::Constraint;
use crate::model::{Code, Display, Job, Problem};
use crate::units::Length;

/// The problem of an array that has no layout.
///
/// # Rule
///
/// A set of constraints clashes when there is no layout with all others dropped. Of the sets that clash the smallest is
/// told, and the first of equally small ones. What would have to give is, of each length in the set, the least easing
/// (in whole 1/16 in or millimetres) with which there is a layout, all else as it is.
pub(super) fn no_layout(job: &Job, none: NoLayout) -> Problem {
    let alone = alone(job, none);
    let array = &job.slopes[none.slope].arrays[none.array];
    let in_force: Vec<Constraint> =
        Constraint::ALL.into_iter().filter(|constraint| constraint.dropped(&alone).is_some()).collect();
    let who = format!("the array `{}` on `{}` has no layout", array.name, job.slopes[none.slope].name);
    let (message, help) = match smallest(&alone, &in_force) {
        Some(clash) => {
            let names: Vec<String> = clash.iter().map(|constraint| constraint.shown(&alone)).collect();
            let together = if names.len() == 1 { "can't be kept" } else { "can't be kept together" };
            let gives: Vec<String> =
                clash.iter().filter_map(|constraint| what_gives(&alone, *constraint)).collect();
            let help = if gives.is_empty() {
                "more than one of them has to give way: move the array, or measure its rafters again"
                    .to_owned()
            } else {
                gives.join(", or ")
            };
            (format!("{who}: {} {together}", listed(&names)), help)
        }
        None => (
            format!("{who}, whatever gives way: no two rafters with tile over them lie below its rails"),
            "look at the place of the array, at the rafters and at the courses".to_owned(),
        ),
    };
    let path = format!("/slopes/{}/arrays/{}/rails", none.slope, none.array);
    Problem::new(Code::NoLayout, message, help, path)
}

/// The job with this array as the only one that is laid.
fn alone(job: &Job, none: NoLayout) -> Job {
    let mut job = job.clone();
    for (place, slope) in job.slopes.iter_mut().enumerate() {
        for (number, array) in slope.arrays.iter_mut().enumerate() {
            if (place, number) != (none.slope, none.array) {
                array.rails = None;
            }
        }
    }
    job
}

fn has_layout(job: &Job) -> bool {
    lay(job, Wanted::default()).is_ok()
}

/// The smallest set that clashes with all other constraints dropped; `None` where nothing helps.
fn smallest(job: &Job, in_force: &[Constraint]) -> Option<Vec<Constraint>> {
    let with = |kept: &[Constraint]| {
        let dropped = in_force.iter().filter(|constraint| !kept.contains(constraint));
        dropped.fold(job.clone(), |job, constraint| constraint.dropped(&job).unwrap_or(job))
    };
    if !has_layout(&with(&[])) {
        return None;
    }
    // What alone makes room when it is dropped is in every set that clashes: only sets with all of it are looked at.
    let others = |one: &Constraint| in_force.iter().copied().filter(|other| other != one).collect::<Vec<_>>();
    let needed: Vec<Constraint> =
        in_force.iter().copied().filter(|one| has_layout(&with(&others(one)))).collect();
    let clashes = |size: usize| {
        let sets = subsets(in_force, size).into_iter();
        let mut sets = sets.filter(|kept| needed.iter().all(|one| kept.contains(one)));
        sets.find(|kept| !has_layout(&with(kept)))
    };
    let (least, most) = (needed.len().max(1), needed.len().max(MOST_TOGETHER));
    Some((least..=most).find_map(clashes).unwrap_or_else(|| in_force.to_vec()))
}

/// Larger sets are not looked for, unless more than that are in every one: all constraints are told then.
const MOST_TOGETHER: usize = 4;

/// All subsets of a size, in the order of the list.
fn subsets(of: &[Constraint], size: usize) -> Vec<Vec<Constraint>> {
    match (of, size) {
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

/// How much a constraint has to give way so that there is a layout; `None` where that alone does not help.
fn what_gives(job: &Job, constraint: Constraint) -> Option<String> {
    let step = match job.display {
        Display::Imperial => Length::SIXTEENTH,
        Display::Metric => Length::MM,
    };
    let eased = |steps: i64| constraint.eased(job, Length::from_nm(steps * step.nm()));
    let helps = |steps: i64| eased(steps).is_some_and(|job| has_layout(&job));
    if !constraint.is_length() {
        return helps(1).then(|| constraint.given_up().to_owned());
    }
    let mut enough = 1;
    while !helps(enough) {
        enough *= 2;
        if enough > MOST_STEPS {
            return None;
        }
    }
    let mut too_little = enough / 2;
    while enough - too_little > 1 {
        let middle = (enough + too_little) / 2;
        if helps(middle) { enough = middle } else { too_little = middle }
    }
    let by = Length::from_nm(enough * step.nm());
    Some(constraint.eased_by(&eased(enough)?, job.display.length(by)))
}

/// No constraint is eased by more steps.
const MOST_STEPS: i64 = 4096;

fn listed(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

impl Constraint {
    /// The job without the constraint; `None` where it is not in force.
    fn dropped(self, job: &Job) -> Option<Job> {
        let by = match self {
            // An array can't be moved anywhere, and what is far is as good as anywhere.
            Constraint::Shift => {
                [24, 12, 6, 3, 1].map(|inches| Length::from_nm(inches * Length::INCH.nm())).into()
            }
            _ => vec![Length::LIMIT],
        };
        by.into_iter().find_map(|by| self.eased(job, by))
    }

    /// What it is, with its length.
    fn shown(self, job: &Job) -> String {
        let show = |length: Length| job.display.length(length);
        let arrays = job.slopes.iter().flat_map(|slope| &slope.arrays);
        let Some((array, rails)) = arrays.filter_map(|array| Some((array, array.rails.as_ref()?))).next()
        else {
            return String::new();
        };
        match self {
            Constraint::GreatestSpan => format!("the greatest span of {}", show(rails.greatest_span)),
            Constraint::GreatestOverhang => {
                format!("the greatest overhang of {}", show(rails.greatest_overhang))
            }
            Constraint::ClampWindows => "the clamp windows".to_owned(),
            Constraint::Shift => {
                let shift = &array.shift;
                let sides =
                    [(shift.left, "left"), (shift.right, "right"), (shift.down, "down"), (shift.up, "up")];
                let ways = sides.map(|(length, way)| format!("{} {way}", show(length)));
                format!("the array's shift of at most {}", ways.join(", "))
            }
            Constraint::Setbacks => "the setbacks".to_owned(),
            Constraint::LeastDistance => format!("the least distance of {}", show(rails.least_distance)),
            Constraint::LeastMargin => format!("the least margin of {}", show(job.practice.least_margin)),
            Constraint::Zones => "the zones of shorter spans".to_owned(),
            Constraint::Stagger => "posts staggered between the rails".to_owned(),
            Constraint::NoBlocking => "no blocking between the rafters".to_owned(),
            Constraint::FixedPosts => "the fixed posts".to_owned(),
        }
    }

    /// What would have to give, once it does.
    fn eased_by(self, eased: &Job, by: String) -> String {
        match self {
            Constraint::GreatestSpan
            | Constraint::GreatestOverhang
            | Constraint::LeastDistance
            | Constraint::LeastMargin => {
                let now = self.shown(eased);
                let (name, length) = now.rsplit_once(" of ").unwrap_or((&now, ""));
                format!("let {name} be {length}")
            }
            Constraint::ClampWindows => format!("widen the clamp windows by {by} at both ends"),
            Constraint::Shift => format!("let the array move {by} further each way"),
            _ => format!("shorten the setbacks by {by}"),
        }
    }

    /// What would have to be given up.
    fn given_up(self) -> &'static str {
        match self {
            Constraint::Zones => "let rails span as far in the zones as elsewhere",
            Constraint::Stagger => "don't stagger the posts",
            Constraint::NoBlocking => "allow blocking",
            _ => "free the fixed posts",
        }
    }
}
