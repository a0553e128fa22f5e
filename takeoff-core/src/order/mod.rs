//! One order for several jobs: needs added up before they are rounded to packs, spares pooled by tile.
//!
//! # How do jobs share an order?
//!
//! The order takes the greatest service level that one of its jobs asks for. Tiles on hand are each job's own and add up. A
//! pool can need more than its jobs apart where each of them only just reaches the level; it never needs more than they do
//! at the level that they keep together.
mod materials;
mod prices;
mod rolls;
mod spares;

pub use spares::OrderSpares;

use std::collections::BTreeSet;

use crate::model::{Code, Display, Job, Problem, Problems};
use crate::pricing::Purchase;
use crate::pricing::purchase;
use crate::quantities::{MaterialLine, RollPlan};
use crate::takeoff::Takeoff;

/// A job with its takeoff, on its way into an order.
#[derive(Clone, Copy, Debug)]
pub struct Ordered<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its takeoff.
    pub takeoff: &'a Takeoff,
}

/// What is ordered for several jobs at once.
#[derive(Clone, Debug)]
pub struct Order {
    /// The jobs' names.
    pub jobs: Vec<String>,
    /// Which units reports show: those of the first job.
    pub display: Display,
    /// The probability with which the spares of each kind of piece are enough for all jobs together: the greatest that
    /// a job asks for.
    pub service_level: f64,
    /// What to buy, line by line; the basis of a line is what each job needs of it.
    pub materials: Vec<MaterialLine>,
    /// Spare tiles by kind of piece.
    pub spares: Vec<OrderSpares>,
    /// How the patches of all jobs are cut from rolls, an underlayment each; a patch is `job/slope/patch`.
    pub rolls: Vec<RollPlan>,
    /// In which packs, and what it costs; `None` where no job has a price list.
    pub purchase: Option<Purchase>,
}

/// The order for some jobs.
///
/// Quantities and counts of a line are added up over the jobs, each with its waste, and only then brought up to whole
/// packs. Spares of a tile are those of the pool of all its jobs, with the rates of each.
///
/// # Errors
///
/// No job, two jobs of one name, tiles or underlayments of one name that are not the same, price lists that disagree; and a pool whose
/// breakage has no usable distribution.
///
/// # Example
///
/// Two small jobs in one order, with no more spares than one by one.
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::model::Job;
/// use takeoff_core::order::{order, Ordered};
/// use takeoff_core::takeoff;
/// let jobs = ["one", "two"].map(|name| {
///     let named = EXAMPLE.replacen("garage", name, 1);
///     Job::read(&named, &Files::new()).unwrap()
/// });
/// let taken = [takeoff(&jobs[0]).unwrap(), takeoff(&jobs[1]).unwrap()];
/// let ordered = [0, 1].map(|i| Ordered { job: &jobs[i], takeoff: &taken[i] });
/// let of_both = order(&ordered).unwrap();
/// assert_eq!(of_both.jobs, ["one", "two"]);
/// assert!(of_both.spares[0].spares.spares <= of_both.spares[0].apart);
/// ```
pub fn order(jobs: &[Ordered<'_>]) -> Result<Order, Problems> {
    let Some(first) = jobs.first() else {
        return Err(Problems::from(problem(
            Code::NoJobs,
            "an order needs a job".to_owned(),
            "name a job file",
        )));
    };
    check_names(jobs)?;
    let levels = jobs.iter().map(|ordered| ordered.takeoff.service_level);
    let service_level = levels.max_by(f64::total_cmp).unwrap_or_default();
    let spares = spares::pooled_spares(jobs, service_level)?;
    let rolls = rolls::plans(jobs)?;
    let materials = materials::materials(jobs, &spares, &rolls, first.takeoff.display);
    let prices = prices::joined(jobs)?;
    let purchase = prices.map(|prices| purchase(&materials, Some(&prices), &prices.currency)).transpose()?;
    Ok(Order {
        jobs: jobs.iter().map(|ordered| ordered.job.name.clone()).collect(),
        display: first.takeoff.display,
        service_level,
        materials,
        spares,
        rolls,
        purchase,
    })
}

/// Refuses two jobs of one name, for each job's needs stand under its name.
fn check_names(jobs: &[Ordered<'_>]) -> Result<(), Problems> {
    let mut names = BTreeSet::new();
    let twice = jobs.iter().filter(|ordered| !names.insert(&ordered.job.name)).map(|ordered| {
        let message = format!("two jobs are called `{}`", ordered.job.name);
        problem(Code::TwoJobsOfOneName, message, "call one of them by another name, or take it out")
    });
    let problems: Problems = twice.collect();
    if problems.is_empty() { Ok(()) } else { Err(problems) }
}

/// A problem of several jobs together, at no place in one of them.
fn problem(code: Code, message: String, help: &str) -> Problem {
    Problem::new(code, message, help, "")
}
