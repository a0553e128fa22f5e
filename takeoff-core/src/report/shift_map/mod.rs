//! Map of an array's cost over its allowed shift.
mod axes;
mod cells;
mod legend;
mod marks;
mod scale;

use super::markup::{Markup, Tag};
use super::plain;
use super::quantity::Quantities;
use crate::layout::{ArrayLayout, Layout};

use axes::Axes;
use scale::Scale;

/// Lines and letters; what is behind.
const INK: &str = "#1d2733";
const PAPER: &str = "#ffffff";
/// Left and upper side of the map, and what is to the right of it and below.
const PLOT: [f64; 2] = [76.0, 86.0];
const LEGEND: f64 = 236.0;
const FOOT: f64 = 54.0;
/// The least width and height of the drawing.
const LEAST: [f64; 2] = [480.0, 350.0];

/// The shift map of an array of a layout as SVG, or nothing if the layout has no such array or the array no map: a cell
/// for each place over the shift that the job allows, the darker the more the array costs there, with its rails and posts
/// at their best. Cells without a layout are hatched, those with posts at fault crossed. A ring is where the array is, a
/// diamond where it goes. It can be read in grey.
///
/// # Example
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::layout::layout;
/// use takeoff_core::model::Job;
/// use takeoff_core::report::shift_map;
/// let labour = r#"{ "bid": { "currency": "USD", "labour": { "rate_per_hour": "60.00", "minutes": { "set": 20 } } },"#;
/// let job = EXAMPLE.replacen('{', labour, 1);
/// let laid = layout(&Job::read(&job, &Files::new())?)?;
/// assert_eq!(shift_map(&laid.layout, "south", "no such array"), None);
/// # Ok::<(), takeoff_core::Problems>(())
/// ```
pub fn shift_map(layout: &Layout, slope: &str, array: &str) -> Option<String> {
    let number = layout.arrays.iter().position(|of| of.slope == slope && of.array == array)?;
    let array = layout.arrays.get(number)?;
    let map = array.map.as_ref()?;
    let shown = Quantities(layout.display);
    let (axes, scale) = (Axes::new(map, shown), Scale::new(map, &layout.currency));
    let prefix = format!("shift-{}", number + 1);
    let [right, lower] = axes.ends();
    let width = (right + LEGEND).max(LEAST[0]);
    let height = (lower + FOOT).max(LEAST[1]);
    let said = said(array, &layout.currency, shown);
    let mut svg = Markup::default();
    svg.tag("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", width)
        .with("height", height)
        .with("viewBox", format!("0 0 {width} {height}"))
        .with("font-family", "Helvetica, Arial, sans-serif")
        .with("font-size", 11.0)
        .with("fill", INK)
        .with("role", "img")
        .with("aria-labelledby", format!("{prefix}-title {prefix}-desc"))
        .open();
    let heading = format!("Cost over array position: {} on {}", array.array, array.slope);
    svg.tag("title").with("id", format!("{prefix}-title")).text(&format!("{}, {heading}", layout.job));
    svg.tag("desc").with("id", format!("{prefix}-desc")).text(&said.join(" "));
    svg.tag("rect").with("width", width).with("height", height).with("fill", PAPER).empty();
    text(&mut svg, [16.0, 24.0], "start")
        .with("font-size", 14.0)
        .with("font-weight", "bold")
        .text(&plain::shortened(&heading, (width / 9.5) as usize));
    for (line, down) in said.iter().zip([43.0, 58.0]) {
        text(&mut svg, [16.0, down], "start").text(line);
    }
    cells::define(&mut svg, &prefix);
    cells::draw(&mut svg, map, &axes, &scale, &prefix);
    axes.draw(&mut svg);
    marks::draw(&mut svg, array, &axes);
    legend::draw(&mut svg, array, &scale, &prefix, right + 24.0, &layout.currency);
    svg.close("svg");
    Some(svg.done())
}

/// The map in two short sentences.
fn said(array: &ArrayLayout, currency: &str, shown: Quantities) -> [String; 2] {
    let goes = match shown.ways([array.right_mm, array.up_mm]) {
        None => "It stays where it is.".to_owned(),
        Some(ways) => {
            let saves = array.saves().map(|saves| format!(", which saves {saves} {currency}"));
            format!("It goes {ways}{}.", saves.unwrap_or_default())
        }
    };
    [goes, "Sum of single-post costs; rails and posts at their best for each position.".to_owned()]
}

fn text<'m>(svg: &'m mut Markup, [x, y]: [f64; 2], anchor: &str) -> Tag<'m> {
    svg.tag("text").with("x", x).with("y", y).with("text-anchor", anchor)
}
