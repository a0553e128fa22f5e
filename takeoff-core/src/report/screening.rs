//! The screening of the lags in words: its result, its inputs, and what it does not cover.
use super::quantity::Quantities;
use super::totals::Totals;
use super::words;
use crate::model::Display;
use crate::report::document::{PostScreening, Screening};
use crate::units::{Force, Pressure};

/// Totals and notes of a screening.
pub(super) fn screened(screening: &Screening, display: Display) -> Totals {
    let posts = &screening.posts;
    let above = posts.iter().filter(|post| post.exceeds()).count() as u64;
    let all = posts.len() as u64;
    let mut totals = Totals::new(format!(
        "Screening of the lags against wind uplift: {}",
        words::count(all, "post", "posts")
    ));
    totals.count(all - above, "with a ratio of uplift to resistance of at most 1");
    totals.count_if_any(above, "with a ratio above 1, or without thread in the wood: see the findings");
    totals.count_if_any(screening.not_screened.len() as u64, "not screened: see the findings");
    totals.notes.push(screening.note.clone());
    if let Some(worst) = worst(posts) {
        totals.notes.push(worst_line(worst, display));
    }
    totals.notes.push(format!("Inputs: {}.", inputs(screening)));
    totals.notes.push(format!("Not covered: {}.", screening.not_covered.join("; ")));
    totals
}

/// The post with the greatest ratio; of equal ones the first.
fn worst(posts: &[PostScreening]) -> Option<&PostScreening> {
    let ratio = |post: &PostScreening| post.ratio.unwrap_or(f64::INFINITY);
    posts.iter().reduce(|worst, post| if ratio(post) > ratio(worst) { post } else { worst })
}

fn worst_line(post: &PostScreening, display: Display) -> String {
    let shown = Quantities(display);
    let [uplift, resistance] = [post.uplift_n, post.resistance_n].map(|n| display.force(Force::from_n(n)));
    let ratio = post.ratio.map_or("no thread in the wood".to_owned(), |ratio| format!("ratio {ratio:.2}"));
    format!(
        "Greatest: {} {}, {ratio}: {uplift} of uplift ({} {}, on {}) against {resistance} ({}, {} of thread each in \
         the {}).",
        post.slope,
        post.post,
        display.pressure(Pressure::from_pa(post.pressure_pa)),
        words::pressure_from(post.pressure_from),
        shown.area(post.tributary_mm2),
        words::count(post.lags, "lag", "lags"),
        shown.short_length(post.thread_mm),
        words::member(post.member),
    )
}

/// `C_D 1.6 (default), V 115 mph, …`.
fn inputs(screening: &Screening) -> String {
    let inputs = screening.inputs.iter().map(|input| {
        let default = if input.source.is_some() { " (default)" } else { "" };
        format!("{} {}{default}", input.symbol, input.value)
    });
    inputs.collect::<Vec<_>>().join(", ")
}
