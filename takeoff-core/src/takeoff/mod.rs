//! From a job to its takeoff: reads like the trade's own steps.
//!
//! ```text
//! job ─ slope by slope ─ site ─ openings ─ cuts ─────────┐
//!                          └─ methods ─ patches ─ zones ─┴─ tiles taken up ─ posts ─┐
//!                                            patches ─ cutting plans of rolls ──────┤
//!                                                                                   ├─ materials
//!                                            all slopes ─ spares by kind of tile ───┘      └─ bid
//!                                            arrays, posts, lags ─ screening
//! ```
mod cautions;
mod result;

use crate::slope_takeoff::SlopeTakeoff;
pub use cautions::{CAUTIONS, HARVEST_CAUTION, LAYOUT_CAUTION, THREE_COURSE_CAUTION, question};
pub use result::*;

use crate::model::{Job, Problem, Problems};
use crate::pricing::bid;
use crate::quantities::{conflicting_items, job_bill, materials, unused_waste};
use crate::screening::screening;

use crate::quantities::{counts, cutting};
use crate::slope_takeoff::{Worked, work};
use crate::spares::tile_spares;

/// The takeoff of a job.
///
/// # Errors
///
/// When the count of tiles that may break has no usable distribution (a breakage near 1 on very many tiles), and when an
/// assembly brings an item with the name of a line that the takeoff works out in another way
/// ([`conflicting_items`]).
///
/// # Example
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::model::Job;
/// use takeoff_core::takeoff;
/// let takeoff = takeoff(&Job::read(EXAMPLE, &Files::new()).unwrap()).unwrap();
/// assert_eq!(takeoff.counts.posts, takeoff.slopes[0].posts.len() as u64);
/// ```
pub fn takeoff(job: &Job) -> Result<Takeoff, Problems> {
    let conflicts = conflicting_items(job);
    if !conflicts.is_empty() {
        return Err(conflicts);
    }
    let worked: Vec<Worked> =
        job.slopes.iter().enumerate().map(|(place, slope)| work(job, place, slope)).collect();
    let (spares, of_spares) = tile_spares(job, &worked)?;
    let findings = worked.iter().flat_map(|worked| &worked.findings);
    let mut findings: Vec<Problem> = job.findings.iter().chain(findings).chain(&of_spares).cloned().collect();
    let slopes: Vec<SlopeTakeoff> = worked.into_iter().map(|worked| worked.takeoff).collect();
    let counts = counts(&slopes, &spares);
    let (screening, screened) = screening(job, &slopes);
    findings.extend(screened);
    let (rolls, joined) = cutting(job, &slopes);
    findings.extend(joined);
    let bill = job_bill(job, &slopes, &spares);
    let materials = materials(job, &bill, &slopes, &spares, &rolls);
    findings.extend(unused_waste(job, &materials));
    Ok(Takeoff {
        job: job.name.clone(),
        display: job.display,
        bid: bid(job, &bill, &materials)?,
        materials,
        service_level: job.practice.service_level,
        cautions: cautions::cautions(&counts),
        counts,
        spares,
        rolls,
        slopes,
        screening,
        findings,
        assumptions: job.assumptions.clone(),
        survey: job
            .survey
            .iter()
            .map(|(asked, answer)| SurveyAnswer { question: *asked, answer: answer.clone() })
            .collect(),
    })
}
