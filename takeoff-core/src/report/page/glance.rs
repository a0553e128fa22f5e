//! The page's title and the totals.
use super::super::findings::by_code;
use super::super::markup::Markup;
use super::super::quantity::Quantities;
use super::super::totals::{Totals, work};
use super::super::words;
use super::bid::price;
use super::section::Section;
use super::{cautions, slopes};
use crate::report::document::Takeoff;

/// The heading of the page.
pub(super) fn title(html: &mut Markup, takeoff: &Takeoff) {
    html.tag("p").with("class", "kind").text("Takeoff of posts through a tile roof");
    html.tag("h1").text(&takeoff.job);
    let slopes = words::count(takeoff.slopes.len() as u64, "slope", "slopes");
    let posts = words::count(takeoff.counts.posts, "post", "posts");
    html.tag("p").text(&format!("{posts} on {slopes}. Measure on the roof before you cut or order."));
}

/// The totals, what is to be settled, and the slopes.
pub(super) fn section(takeoff: &Takeoff) -> Section {
    Section::new("glance", "At a glance", |html| {
        cautions::first(html, takeoff);
        if let Some(bid) = &takeoff.bid {
            html.tag("p").with("class", "price").text(&price(bid));
        }
        html.tag("div").with("class", "totals").holds(|html| {
            work(takeoff).iter().for_each(|totals| group(html, totals));
        });
        to_settle(html, takeoff);
        slopes::table(html, takeoff, Quantities(takeoff.display));
    })
}

fn group(html: &mut Markup, Totals { head, counts, notes }: &Totals) {
    html.tag("div").holds(|html| {
        html.tag("h3").text(head);
        self::counts(html, counts);
        for note in notes {
            html.tag("p").with("class", "note").text(note);
        }
    });
}

/// Counts, each with what it counts.
pub(super) fn counts(html: &mut Markup, counts: &[(u64, String)]) {
    html.tag("ul").with("class", "counts").holds(|html| {
        for (count, what) in counts {
            html.tag("li").with("class", if *count == 0 { "none" } else { "some" }).holds(|html| {
                html.tag("b").text(&count.to_string());
                html.tag("span").text(what);
            });
        }
    });
}

/// Open points to settle before ordering, each with a link.
fn to_settle(html: &mut Markup, takeoff: &Takeoff) {
    let open = takeoff.survey.iter().filter(|answer| answer.is_open()).count() as u64;
    let defaults = takeoff.assumptions.iter().filter(|assumption| !assumption.set_by_job).count() as u64;
    let kinds = by_code(&takeoff.findings).len() as u64;
    let findings = words::count(takeoff.findings.len() as u64, "finding", "findings");
    let unpriced = takeoff.bid.as_ref().map_or(0, |bid| bid.unpriced.len() as u64);
    let screened = takeoff.screening.iter().flat_map(|screening| &screening.posts);
    let above = screened.filter(|post| post.exceeds()).count() as u64;
    let entries = [
        (unpriced, "bid", format!("{} without a price", words::count(unpriced, "item", "items"))),
        (
            above,
            "screening",
            format!(
                "{} with more uplift than its lags are screened for",
                words::count(above, "post", "posts")
            ),
        ),
        (kinds, "findings", format!("{findings} of {}", words::count(kinds, "kind", "kinds"))),
        (
            open,
            "survey",
            format!("{} not yet asked on the survey", words::count(open, "question", "questions")),
        ),
        (
            defaults,
            "assumptions",
            format!(
                "{} that the job leaves at its default",
                words::count(defaults, "assumption", "assumptions")
            ),
        ),
    ];
    html.tag("h3").text("To settle before you order");
    html.tag("ul").with("class", "settle").holds(|html| {
        for (_, id, text) in entries.iter().filter(|(count, ..)| *count > 0) {
            html.tag("li").holds(|html| html.tag("a").with("href", format!("#{id}")).text(text));
        }
    });
}
