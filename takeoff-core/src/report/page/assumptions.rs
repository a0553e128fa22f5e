//! The assumptions in force.
use super::grid::Grid;
use super::section::Section;
use crate::report::document::Takeoff;

/// Every assumption with its value, and whether the job sets it.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.assumptions.is_empty() {
        return None;
    }
    Some(Section::new("assumptions", "Assumptions", |html| {
        html.tag("p").text("What the job leaves alone has its default. Change either in the job's file.");
        Grid::new("Assumptions in force", &takeoff.assumptions)
            .name("what", |assumption| assumption.what.clone())
            .number("value", |assumption| assumption.value.clone())
            .words("comes from", |assumption| {
                if assumption.set_by_job { "the job" } else { "the default" }.to_owned()
            })
            .write(html);
    }))
}
