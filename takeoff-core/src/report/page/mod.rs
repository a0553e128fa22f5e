//! The report as one HTML page, for the screen and for paper.
//!
//! Everything is in the one file: style and drawings inline, no script, nothing fetched. It is well-formed as XML
//! too, so that any XML reader takes it.
mod assumptions;
mod bid;
mod cautions;
mod cuts;
mod deck;
mod findings;
mod glance;
mod grid;
mod maps;
mod materials;
mod posts;
mod prose;
mod rolls;
mod screening;
mod section;
mod slopes;
mod spares;
mod survey;
mod tiles;

use super::markup::Markup;
use crate::report::document::Takeoff;
use section::Section;

/// The style of the page; it is written as XML and so holds neither `<` nor `&`.
const STYLE: &str = include_str!("page.css");
/// Content security policy: a browser may show the page and do nothing else.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/// A takeoff as one HTML file that needs nothing else: totals, materials, roof maps, tables, findings, assumptions,
/// cautions. Every line of the materials opens to its basis.
///
/// # Example
///
/// ```
/// use takeoff_core::{api::read_and_document, job::{EXAMPLE, Files}, report::page};
/// let takeoff = read_and_document(EXAMPLE, &Files::new()).unwrap();
/// let page = page(&takeoff);
/// assert!(page.starts_with("<!DOCTYPE html>"));
/// assert_eq!(page.matches("Why ").count(), takeoff.materials.len());
/// ```
pub fn page(takeoff: &Takeoff) -> String {
    let sections = sections(takeoff);
    let mut html = Markup::default();
    html.put("<!DOCTYPE html>\n");
    html.tag("html").with("lang", "en").holds(|html| {
        html.tag("head").holds(|html| head(html, takeoff));
        html.tag("body").holds(|html| {
            html.tag("header").holds(|html| glance::title(html, takeoff));
            html.tag("nav").with("aria-label", "Contents").holds(|html| {
                for Section { id, title, .. } in &sections {
                    html.tag("a").with("href", format!("#{id}")).text(title);
                }
            });
            html.tag("main").holds(|html| sections.iter().for_each(|section| section.write(html)));
            html.tag("footer").holds(|html| {
                html.tag("p").text(
                    "An estimate from the measurements in the job file. takeoff.json holds every number of this page \
                     with its basis; the tables are beside it as CSV.",
                );
            });
        });
    });
    html.done()
}

/// Sections of the page, from the question asked first to the one asked last.
fn sections(takeoff: &Takeoff) -> Vec<Section> {
    let all = [
        Some(glance::section(takeoff)),
        bid::section(takeoff),
        Some(materials::section(takeoff)),
        spares::section(takeoff),
        rolls::section(takeoff),
        maps::section(takeoff),
        posts::section(takeoff),
        cuts::section(takeoff),
        tiles::section(takeoff),
        deck::section(takeoff),
        screening::section(takeoff),
        findings::section(takeoff),
        survey::section(takeoff),
        assumptions::section(takeoff),
        Some(cautions::section(takeoff)),
    ];
    all.into_iter().flatten().collect()
}

fn head(html: &mut Markup, takeoff: &Takeoff) {
    html.tag("meta").with("charset", "utf-8").empty();
    html.tag("meta").with("name", "viewport").with("content", "width=device-width, initial-scale=1").empty();
    html.tag("meta").with("http-equiv", "Content-Security-Policy").with("content", POLICY).empty();
    html.tag("title").text(&format!("{}: takeoff of posts through a tile roof", takeoff.job));
    html.tag("style").holds(|html| html.put(STYLE));
}
