//! Cutting plans of the rolls.
use super::super::roll_plan;
use super::section::Section;
use crate::report::document::Takeoff;

/// The cutting plan of every underlayment, if anything is patched.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.rolls.is_empty() {
        return None;
    }
    let section = Section::new("rolls", "Cutting plan", |html| {
        html.tag("p").text("Which piece is cut where stands in cutting.csv, too.");
        for (number, plan) in takeoff.rolls.iter().enumerate() {
            let drawing = roll_plan(plan, number, &takeoff.job, takeoff.display);
            html.tag("div")
                .with("class", "map")
                .with("role", "group")
                .with("aria-label", format!("Cutting plan of {}", plan.underlayment))
                .with("tabindex", "0")
                .holds(|html| html.put(&drawing));
        }
    });
    Some(section.on_new_page())
}
