//! The screening of the lags against wind uplift.
use super::super::quantity::Quantities;
use super::super::screening::screened;
use super::super::words;
use super::glance::counts;
use super::grid::Grid;
use super::section::Section;
use crate::report::document::{PostScreening, Takeoff};
use crate::units::{Force, Pressure};

/// The screening with its posts, inputs and formulas, where the job asks for one.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    let screening = takeoff.screening.as_ref()?;
    let (display, shown) = (takeoff.display, Quantities(takeoff.display));
    let force = |n: f64| display.force(Force::from_n(n));
    let section = Section::new("screening", "Screening of the lags", |html| {
        html.tag("p").with("class", "caution").text(&screening.note);
        counts(html, &screened(screening, display).counts);
        Grid::new("Posts screened", &screening.posts)
            .name("post", |post| post.post.clone())
            .words_if_several("slope", |post| post.slope.clone())
            .words_if_several("array", |post| post.array.clone())
            .number("carries", |post| shown.area(post.tributary_mm2))
            .number("wind", |post| display.pressure(Pressure::from_pa(post.pressure_pa)))
            .words_if_several("from", |post| words::pressure_from(post.pressure_from).to_owned())
            .number("uplift", |post| force(post.uplift_n))
            .words("lags", |post| lags(post, shown))
            .number("thread in the wood", |post| shown.short_length(post.thread_mm))
            .words("ends by", |post| words::thread_limit(post.thread_limit).to_owned())
            .number("resistance", |post| force(post.resistance_n))
            .number("ratio", |post| post.ratio.map_or("no thread".to_owned(), |ratio| format!("{ratio:.2}")))
            .number("pilot hole", |post| shown.range(post.pilot_mm.iter().copied()).unwrap_or_default())
            .write(html);
        Grid::new("Inputs of the screening", &screening.inputs)
            .name("symbol", |input| input.symbol.clone())
            .words("what", |input| input.what.clone())
            .number("value", |input| input.value.clone())
            .words("comes from", |input| {
                input.source.as_ref().map_or("the job".to_owned(), |source| format!("the default: {source}"))
            })
            .write(html);
        for (head, texts) in [("Formulas", &screening.formulas), ("Not covered", &screening.not_covered)] {
            html.tag("h3").text(head);
            html.tag("ul").holds(|html| texts.iter().for_each(|text| html.tag("li").text(text)));
        }
    });
    Some(section.on_new_page())
}

/// `2 × 5/16 in, rafter`.
fn lags(post: &PostScreening, shown: Quantities) -> String {
    format!("{} × {}, {}", post.lags, shown.short_length(post.diameter_mm), words::member(post.member))
}
