//! The roof maps.
use super::super::roof_map;
use super::section::Section;
use crate::takeoff::Takeoff;

/// A map of each slope that has posts.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    let maps: Vec<(&str, String)> = takeoff
        .slopes
        .iter()
        .filter(|slope| !slope.posts.is_empty())
        .filter_map(|slope| Some((slope.name.as_str(), roof_map(takeoff, &slope.name)?)))
        .collect();
    if maps.is_empty() {
        return None;
    }
    let section = Section::new("maps", "Roof maps", |html| {
        html.tag("p").text(
            "Eave at the bottom. Where a map is fitted to the page, go by its scale bar: the files roof-….svg print to \
             the scale that they name.",
        );
        for (slope, map) in &maps {
            html.tag("div")
                .with("class", "map")
                .with("role", "group")
                .with("aria-label", format!("Roof map of {slope}"))
                .with("tabindex", "0")
                .holds(|html| html.put(map));
        }
    });
    Some(section.on_new_page())
}
