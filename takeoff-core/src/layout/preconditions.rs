//! What a job needs before a layout can start.
use super::post_cost::no_costs;
use crate::geometry::grid;
use crate::model::{Array, Job, Problem, Slope};
use crate::model::{Code, Problems};
use crate::units::Currency;

/// Rails × rafters × courses of one array, at most: about a minute of search.
const MOST_PLACES: f64 = 1e6;

/// The currency of the costs, for a job with something to lay out and with prices or labour.
pub(crate) fn currency_of(job: &Job) -> Result<&Currency, Problems> {
    let has_rails = job.slopes.iter().flat_map(|slope| &slope.arrays).any(|array| array.rails.is_some());
    let has_posts = job.slopes.iter().any(|slope| !slope.posts.is_empty());
    if !has_rails && !has_posts {
        let message = "no array has rails, and there is no post: there is nothing to lay out";
        let help = "give `rails` to the arrays whose posts should be placed";
        return Err(Problem::new(Code::NoRails, message, help, "").into());
    }
    if let Some(array) = too_large(job) {
        let message = format!("the array `{array}` has too many rails, rafters and courses for a layout");
        let help = "allow less shift, or split it into several arrays or slopes";
        return Err(Problem::new(Code::TooMany, message, help, "").into());
    }
    job.bid.as_ref().map(|terms| &terms.currency).ok_or_else(|| no_costs().into())
}

/// The first array with more than [`MOST_PLACES`].
fn too_large(job: &Job) -> Option<&str> {
    job.slopes.iter().find_map(|slope| {
        let is_large = |array: &&Array| places(slope, array).is_some_and(|places| places > MOST_PLACES);
        slope.arrays.iter().find(is_large).map(|array| array.name.as_str())
    })
}

/// Rails × rafters × courses of an array; `None` without rails or rafters.
fn places(slope: &Slope, array: &Array) -> Option<f64> {
    let rails = array.rails.as_ref()?;
    let rafters = slope.rafters.as_ref()?.lines.len();
    let window = rails.clamps.iter().map(|window| grid(window.to - window.from)).max()?;
    let reach = window + grid(array.shift.down + array.shift.up);
    let exposures = slope.noses.windows(2).map(|pair| grid(pair[1] - pair[0]));
    let courses = 2 + reach / exposures.min().unwrap_or(reach).max(1);
    let rails = rails.clamps.len() as f64 * f64::from(array.rows);
    Some(rails * rafters as f64 * courses as f64)
}
