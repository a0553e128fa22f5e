//! The roof maps.
use super::super::files::map_name;
use super::super::roof_map::{fits_page, roof_map};
use super::section::Section;
use crate::report::document::Takeoff;

/// A map of each slope that has posts.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    let slopes = takeoff.slopes.iter().enumerate().filter(|(_, slope)| !slope.posts.is_empty());
    let maps: Vec<_> =
        slopes.filter_map(|(number, slope)| Some((number, slope, roof_map(takeoff, &slope.name)?))).collect();
    if maps.is_empty() {
        return None;
    }
    let section = Section::new("maps", "Roof maps", |html| {
        html.tag("p").text("Eave at the bottom. On screen go by the scale bar.");
        for (number, slope, map) in &maps {
            let fits = fits_page(slope);
            html.tag("div")
                .with("class", if fits { "map" } else { "map large" })
                .with("role", "group")
                .with("aria-label", format!("Roof map of {}", slope.name))
                .with("tabindex", "0")
                .holds(|html| {
                    if !fits {
                        let file = map_name(*number, &slope.name);
                        html.tag("p").with("class", "note").text(&format!(
                            "This sheet is larger than a page and is fitted to it in print: {file} prints to scale."
                        ));
                    }
                    html.put(map);
                });
        }
    });
    Some(section.on_new_page())
}
