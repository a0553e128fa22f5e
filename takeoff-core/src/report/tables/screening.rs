//! The screening of the lags.
use super::super::quantity::Quantities;
use super::super::words;
use super::Table;
use crate::report::document::{Distance, PostScreening, Takeoff};
use crate::units::{Force, Pressure};

/// One row a post that is screened, slope by slope in the job's order; none where nothing is.
pub fn screening(takeoff: &Takeoff) -> Table<'_> {
    let shown = Quantities(takeoff.display);
    let has = |distance: Option<Distance>| distance.map(|distance| distance.has_mm);
    let asked = |distance: Option<Distance>| distance.map(|distance| distance.asked_mm);
    let force = |n| takeoff.display.force(Force::from_n(n));
    let posts: Vec<&PostScreening> =
        takeoff.screening.iter().flat_map(|screening| &screening.posts).collect();
    Table::from_rows(posts)
        .text("slope", |post| post.slope.as_str())
        .text("post", |post| post.post.as_str())
        .text("array", |post| post.array.as_str())
        .number("left_mm", |post| post.tributary_mm[0])
        .number("lower_mm", |post| post.tributary_mm[1])
        .number("right_mm", |post| post.tributary_mm[2])
        .number("upper_mm", |post| post.tributary_mm[3])
        .number("tributary_mm2", |post| post.tributary_mm2)
        .text("tributary", |post| shown.area(post.tributary_mm2))
        .number_if_any("gamma_a", |post| post.gamma_a)
        .number("pressure_pa", |post| post.pressure_pa)
        .text("pressure", |post| takeoff.display.pressure(Pressure::from_pa(post.pressure_pa)))
        .text("pressure_from", |post| words::pressure_from(post.pressure_from))
        .number("uplift_n", |post| post.uplift_n)
        .text("uplift", |post| force(post.uplift_n))
        .text("member", |post| words::member(post.member))
        .number("specific_gravity", |post| post.specific_gravity)
        .whole("lags", |post| post.lags)
        .number("diameter_mm", |post| post.diameter_mm)
        .number("thread_mm", |post| post.thread_mm)
        .text("thread", |post| shown.short_length(post.thread_mm))
        .text("thread_limit", |post| words::thread_limit(post.thread_limit))
        .number("withdrawal_n_per_mm", |post| post.withdrawal_n_per_mm)
        .number("resistance_n", |post| post.resistance_n)
        .text("resistance", |post| force(post.resistance_n))
        .number_if_any("ratio", |post| post.ratio)
        .number_if_any("edge_mm", |post| has(post.distances.edge))
        .number_if_any("edge_asked_mm", |post| asked(post.distances.edge))
        .number_if_any("end_mm", |post| has(post.distances.end))
        .number_if_any("end_asked_mm", |post| asked(post.distances.end))
        .number_if_any("spacing_mm", |post| has(post.distances.spacing))
        .number_if_any("spacing_asked_mm", |post| asked(post.distances.spacing))
        .number("pilot_least_mm", |post| post.pilot_mm[0])
        .number("pilot_greatest_mm", |post| post.pilot_mm[1])
        .done()
}
