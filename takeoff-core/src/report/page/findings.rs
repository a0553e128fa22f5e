//! Findings with their fixes.
use super::super::findings::{by_code, place};
use super::super::markup::Markup;
use super::super::words;
use super::prose::prose;
use super::section::Section;
use crate::model::Problem;
use crate::report::document::Takeoff;

/// Findings of one kind of which more than so many are folded away.
const MANY: usize = 20;

/// The findings by kind.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.findings.is_empty() {
        return None;
    }
    let section = Section::new("findings", "Findings", |html| {
        let findings = words::count(takeoff.findings.len() as u64, "finding", "findings");
        html.tag("p").text(&format!("{findings}: check before ordering."));
        for (code, group) in by_code(&takeoff.findings) {
            let head = format!("{code} ({})", group.len());
            if group.len() > MANY {
                html.tag("details").with("class", "long").holds(|html| {
                    html.tag("summary").holds(|html| html.tag("h3").text(&head));
                    list(html, takeoff, &group);
                });
            } else {
                html.tag("h3").text(&head);
                list(html, takeoff, &group);
            }
        }
    });
    Some(section.on_new_page())
}

/// Findings of one kind; a fix that all of them share is written once.
fn list(html: &mut Markup, takeoff: &Takeoff, group: &[&Problem]) {
    let shared =
        group.first().map(|first| &first.help).filter(|help| group.iter().all(|of| of.help == **help));
    html.tag("ul").with("class", "findings").holds(|html| {
        for finding in group {
            html.tag("li").holds(|html| {
                if let Some(place) = place(takeoff, &finding.path) {
                    html.tag("b").text(&place);
                }
                html.tag("span").holds(|html| prose(html, &finding.message));
                if shared.is_none() {
                    help(html, &finding.help);
                }
            });
        }
    });
    if let Some(shared) = shared {
        help(html, shared);
    }
}

fn help(html: &mut Markup, text: &str) {
    if !text.is_empty() {
        html.tag("p").with("class", "help").holds(|html| {
            html.say("Fix: ");
            prose(html, text);
        });
    }
}
