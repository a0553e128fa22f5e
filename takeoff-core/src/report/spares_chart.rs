//! A small chart: how likely the spare tiles run short, by how many are bought.
use super::markup::Markup;
use super::{plain, words};
use crate::report::document::Takeoff;
use crate::spares::{Alternative, TileSpares};

/// Width and height of the chart, and the sides of its plot: left, upper, right, lower.
const SIZE: [f64; 2] = [480.0, 300.0];
const PLOT: [f64; 4] = [52.0, 74.0, 464.0, 254.0];
/// Lines and letters; bars; what is behind; the number to buy.
const INK: &str = "#1d2733";
const BAR: &str = "#b9b3a8";
const GRID: &str = "#dedad2";
const PAPER: &str = "#ffffff";

/// The chart of a kind of piece as SVG, or nothing if the takeoff has none of that name: a bar for each number of tiles
/// that could be bought, as high as the chance that they run short. The number to buy is dark, the line of dashes is
/// what the service level leaves open, and a diamond marks the number at the least expected cost, where the job says
/// what a tile short costs. It can be read in grey.
///
/// # Example
///
/// ```
/// use takeoff_core::{api::read_and_document, job::{EXAMPLE, Files}, report::spares_chart};
/// let takeoff = read_and_document(EXAMPLE, &Files::new()).unwrap();
/// let svg = spares_chart(&takeoff, "flat-13").unwrap();
/// assert_eq!(svg.matches("data-spares=").count(), takeoff.spares[0].spares.alternatives.len());
/// ```
pub fn spares_chart(takeoff: &Takeoff, tile: &str) -> Option<String> {
    let number = takeoff.spares.iter().position(|of| of.tile.to_string() == tile)?;
    let of_kind = takeoff.spares.get(number)?;
    let prefix = format!("spares-{}", number + 1);
    let mut svg = Markup::default();
    svg.tag("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", SIZE[0])
        .with("height", SIZE[1])
        .with("viewBox", format!("0 0 {} {}", SIZE[0], SIZE[1]))
        .with("font-family", "Helvetica, Arial, sans-serif")
        .with("font-size", 11.0)
        .with("fill", INK)
        .with("role", "img")
        .with("aria-labelledby", format!("{prefix}-title {prefix}-desc"))
        .open();
    let heading = format!("{tile}: chance of running short");
    svg.tag("title").with("id", format!("{prefix}-title")).text(&format!("{}, {heading}", takeoff.job));
    svg.tag("desc").with("id", format!("{prefix}-desc")).text(&format!("{}.", said(of_kind).join("; ")));
    svg.tag("rect").with("width", SIZE[0]).with("height", SIZE[1]).with("fill", PAPER).empty();
    text(&mut svg, [16.0, 24.0], "start")
        .with("font-size", 14.0)
        .with("font-weight", "bold")
        .text(&plain::shortened(&heading, 58));
    for (line, down) in said(of_kind).iter().zip([42.0, 57.0]) {
        text(&mut svg, [16.0, down], "start").text(line);
    }
    let axes = Axes::new(&of_kind.spares.alternatives, takeoff.service_level);
    chances(&mut svg, &axes);
    bars(&mut svg, of_kind, &axes);
    numbers(&mut svg, &axes);
    service_level(&mut svg, takeoff.service_level, &axes);
    marks(&mut svg, of_kind, &axes);
    svg.close("svg");
    Some(svg.done())
}

/// The chart in a few words, two lines at most.
fn said(of_kind: &TileSpares) -> Vec<String> {
    let spares = &of_kind.spares;
    let used = spares.expected.map_or(String::new(), |mean| format!("; breakage uses {mean:.1} on average"));
    let mut lines = vec![format!(
        "buy {}: short with a chance of {}{used}",
        spares.spares,
        words::chance(spares.stockout_probability)
    )];
    let free = spares.on_hand + spares.harvested;
    if free > 0 {
        lines.push(format!("{free} more, on hand or from under the arrays, need not be bought"));
    }
    lines
}

/// Axes: numbers of tiles across, probabilities up.
struct Axes {
    first: u64,
    last: u64,
    /// From one bar to the next, in tiles and on the chart.
    step: u64,
    width: f64,
    /// The highest chance that has room.
    top: f64,
    /// Height of the line of the service level.
    open: f64,
}

impl Axes {
    fn new(alternatives: &[Alternative], level: f64) -> Axes {
        let numbers: Vec<u64> = alternatives.iter().map(|of| of.spares).collect();
        let first = numbers.first().copied().unwrap_or_default();
        let highest =
            alternatives.iter().map(|of| of.stockout_probability).fold(2.0 * (1.0 - level), f64::max);
        Axes {
            first,
            last: numbers.last().copied().unwrap_or_default(),
            step: numbers.get(1).map_or(1, |second| second - first),
            width: (PLOT[2] - PLOT[0]) / numbers.len() as f64,
            top: [0.1, 0.2, 0.4].into_iter().find(|&top| top >= highest).unwrap_or(1.0),
            open: 1.0 - level,
        }
    }

    /// The middle of a number's bar.
    fn x(&self, spares: u64) -> f64 {
        PLOT[0] + ((spares as f64 - self.first as f64) / self.step as f64 + 0.5) * self.width
    }

    /// Height of a probability.
    fn y(&self, chance: f64) -> f64 {
        PLOT[3] - chance / self.top * (PLOT[3] - PLOT[1])
    }
}

fn text<'m>(svg: &'m mut Markup, [x, y]: [f64; 2], anchor: &str) -> super::markup::Tag<'m> {
    svg.tag("text").with("x", x).with("y", y).with("text-anchor", anchor)
}

/// A text over lines and bars.
fn label<'m>(svg: &'m mut Markup, at: [f64; 2], anchor: &str) -> super::markup::Tag<'m> {
    text(svg, at, anchor)
        .with("stroke", PAPER)
        .with("stroke-width", 3.0)
        .with("stroke-linejoin", "round")
        .with("paint-order", "stroke")
}

fn line<'m>(svg: &'m mut Markup, [x1, y1]: [f64; 2], [x2, y2]: [f64; 2]) -> super::markup::Tag<'m> {
    svg.tag("line").with("x1", x1).with("y1", y1).with("x2", x2).with("y2", y2)
}

/// The chances, from none to the highest.
fn chances(svg: &mut Markup, axes: &Axes) {
    for quarter in 0..=4_u8 {
        let share = axes.top * f64::from(quarter) / 4.0;
        let colour = if quarter == 0 { INK } else { GRID };
        line(svg, [PLOT[0], axes.y(share)], [PLOT[2], axes.y(share)]).with("stroke", colour).empty();
        text(svg, [PLOT[0] - 6.0, axes.y(share) + 4.0], "end").text(&words::percent(share));
    }
}

fn bars(svg: &mut Markup, of_kind: &TileSpares, axes: &Axes) {
    let gap = if axes.width > 5.0 { 0.14 * axes.width } else { 0.0 };
    for Alternative { spares, stockout_probability } in &of_kind.spares.alternatives {
        // What is next to nothing is still to be seen.
        let height = (PLOT[3] - axes.y(*stockout_probability)).max(if *stockout_probability > 0.0 {
            0.6
        } else {
            0.0
        });
        svg.tag("rect")
            .with("data-spares", spares.to_string())
            .with("x", axes.x(*spares) - axes.width / 2.0 + gap)
            .with("y", PLOT[3] - height)
            .with("width", axes.width - 2.0 * gap)
            .with("height", height)
            .with("fill", if *spares == of_kind.spares.spares { INK } else { BAR })
            .empty();
    }
}

/// Numbers of tiles under the bars, as many as have room.
fn numbers(svg: &mut Markup, axes: &Axes) {
    let letters = axes.last.to_string().len() as f64;
    let room = (PLOT[2] - PLOT[0]) / (letters * 6.5 + 10.0);
    let apart = (axes.last - axes.first) as f64 / room;
    let round = (0_u32..15).flat_map(|power| [1, 2, 5].map(|digit| digit * 10_u64.pow(power)));
    let every = round.into_iter().find(|&every| every as f64 >= apart).unwrap_or(u64::MAX);
    for spares in (axes.first.div_ceil(every)..=axes.last / every).map(|i| i * every) {
        text(svg, [axes.x(spares), PLOT[3] + 15.0], "middle").text(&spares.to_string());
    }
    text(svg, [(PLOT[0] + PLOT[2]) / 2.0, PLOT[3] + 34.0], "middle").text("tiles bought");
}

/// The chance that the service level leaves open.
fn service_level(svg: &mut Markup, level: f64, axes: &Axes) {
    let open = axes.y(axes.open);
    line(svg, [PLOT[0], open], [PLOT[2], open]).with("stroke", INK).with("stroke-dasharray", "5 3").empty();
    let words = format!("{}: asked for {}", words::percent(axes.open), words::percent(level));
    label(svg, [PLOT[2], open - 5.0], "end").text(&words);
}

/// The number to buy, and the one at the least expected cost.
fn marks(svg: &mut Markup, of_kind: &TileSpares, axes: &Axes) {
    let (bought, open) = (&of_kind.spares, axes.y(axes.open));
    let least = of_kind.least_cost.as_ref();
    let same = least.is_some_and(|least| least.spares == bought.spares);
    if let Some(least) =
        least.filter(|least| !same && axes.first <= least.spares && least.spares <= axes.last)
    {
        let [x, top] = [axes.x(least.spares), axes.y(least.stockout_probability)];
        let diamond = format!("M{x:.1} {:.1}l5 5l-5 5l-5 -5Z", top - 5.0);
        let over = (top.min(open) - 56.0).max(PLOT[1] + 8.0);
        line(svg, [x, over + 4.0], [x, top]).with("stroke", INK).empty();
        svg.tag("path").with("d", diamond).with("fill", PAPER).with("stroke", INK).empty();
        label(svg, [x, over], anchor(x)).text(&format!("least cost {}", least.spares));
    }
    let [x, top] = [axes.x(bought.spares), axes.y(bought.stockout_probability)];
    let over = (top.min(open) - 34.0).max(PLOT[1] + 8.0);
    line(svg, [x, over + 4.0], [x, top]).with("stroke", INK).empty();
    let words = if same { ", the least cost too" } else { "" };
    label(svg, [x, over], anchor(x))
        .with("font-weight", "bold")
        .text(&format!("buy {}{words}", bought.spares));
}

/// Text anchor that keeps words at this place on the drawing.
fn anchor(x: f64) -> &'static str {
    match x {
        x if x < PLOT[0] + 60.0 => "start",
        x if x > PLOT[2] - 60.0 => "end",
        _ => "middle",
    }
}
