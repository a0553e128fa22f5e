//! Sentences, and names in them.
use super::super::markup::Markup;
use crate::report::document::Takeoff;

/// Places of which more than so many are folded away.
const MANY: usize = 30;

/// Text in which what the user wrote stands in backticks: each such part is set apart.
pub(super) fn prose(html: &mut Markup, text: &str) {
    let parts: Vec<&str> = text.split('`').collect();
    // An even number of parts has a backtick without its fellow.
    if parts.len().is_multiple_of(2) {
        return html.say(text);
    }
    for (i, part) in parts.into_iter().enumerate() {
        if i % 2 == 0 {
            html.say(part);
        } else {
            html.put("<code>");
            html.say(part);
            html.put("</code>");
        }
    }
}

/// Places named `slope/name`, grouped by slope; long lists are folded away.
pub(super) fn places(html: &mut Markup, takeoff: &Takeoff, places: &[String]) {
    if places.is_empty() {
        return;
    }
    if places.len() <= MANY {
        html.tag("p").with("class", "places").holds(|html| by_slope(html, takeoff, places));
        return;
    }
    html.tag("details").with("class", "places long").holds(|html| {
        html.tag("summary").text(&format!("at {} places", places.len()));
        html.tag("p").holds(|html| by_slope(html, takeoff, places));
    });
}

fn by_slope(html: &mut Markup, takeoff: &Takeoff, places: &[String]) {
    let mut slope_named = None;
    for (i, place) in places.iter().enumerate() {
        let (slope, name) = parted(takeoff, place);
        let new_slope = slope_named != Some(slope);
        slope_named = Some(slope);
        html.put(match (i, new_slope) {
            (0, _) => "",
            (_, true) => "; ",
            (_, false) => ", ",
        });
        if new_slope && takeoff.slopes.len() > 1 {
            isolated(html, slope);
            html.put(": ");
        }
        isolated(html, name);
    }
}

/// Names one after the other.
pub(super) fn names(html: &mut Markup, names: &[String]) {
    for (i, name) in names.iter().enumerate() {
        html.put(if i == 0 { "" } else { ", " });
        isolated(html, name);
    }
}

/// A name whose direction of writing does not turn what stands beside it.
fn isolated(html: &mut Markup, name: &str) {
    html.put("<bdi>");
    html.say(name);
    html.put("</bdi>");
}

/// The slope of a place, and its name there; a name of either may hold a slash.
fn parted<'p>(takeoff: &Takeoff, place: &'p str) -> (&'p str, &'p str) {
    let of = |slope: &str| Some((place.get(..slope.len())?, place.strip_prefix(slope)?.strip_prefix('/')?));
    takeoff.slopes.iter().find_map(|slope| of(&slope.name)).unwrap_or(("", place))
}
