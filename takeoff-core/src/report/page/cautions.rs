//! Cautions: the first near the top, with a link to the full list at the end.
use super::super::markup::Markup;
use super::section::Section;
use crate::report::document::Takeoff;

/// The first caution in full and what the others are about.
pub(super) fn first(html: &mut Markup, takeoff: &Takeoff) {
    let Some((first, others)) = takeoff.cautions.split_first() else { return };
    html.tag("div").with("class", "caution").with("role", "note").holds(|html| {
        html.tag("p").holds(|html| caution(html, first));
        let topics: Vec<&str> =
            others.iter().filter_map(|text| text.split_once(": ").map(|(topic, _)| topic)).collect();
        html.tag("p").holds(|html| {
            html.tag("a").with("href", "#cautions").text(&format!("Read too: {}", topics.join(", ")));
        });
    });
}

/// The full list.
pub(super) fn section(takeoff: &Takeoff) -> Section {
    Section::new("cautions", "Cautions", |html| {
        html.tag("ul").with("class", "caution").holds(|html| {
            for text in &takeoff.cautions {
                html.tag("li").holds(|html| caution(html, text));
            }
        });
    })
}

/// A caution, what it is about set apart.
fn caution(html: &mut Markup, text: &str) {
    let Some((topic, rest)) = text.split_once(": ") else { return html.say(text) };
    html.tag("b").text(&format!("{topic}:"));
    html.say(rest);
}
