//! The summary on screen: what a stranger to the job has to know, in 80 columns.
use super::findings::{by_code, place};
use super::quantity::Quantities;
use super::screen::Page;
use super::totals::{Totals, totals};
use super::{bid, words};
use crate::model::{Display, Problem};
use crate::quantities::MaterialLine;
use crate::report::document::{SlopeTakeoff, Takeoff};
use crate::spares::{LeastCost, TileSpares};
use crate::units::{Unit, Weight};

/// Places of a finding that are named; the others are counted.
const PLACES: usize = 3;

/// The summary of a takeoff: lines of at most 80 columns, each ended by a line feed.
///
/// # Example
///
/// ```
/// use takeoff_core::{api::read_and_document, job::{EXAMPLE, Files}, report::summary};
/// let summary = summary(&read_and_document(EXAMPLE, &Files::new()).unwrap());
/// assert!(summary.lines().all(|line| line.chars().count() <= 80));
/// ```
pub fn summary(takeoff: &Takeoff) -> String {
    let shown = Quantities(takeoff.display);
    let mut page = Page::titled(&format!("{}: takeoff of posts through a tile roof", takeoff.job));
    page.head("Slopes");
    for slope in &takeoff.slopes {
        page.text("  ", "      ", &slope_line(slope, shown));
    }
    for Totals { head, counts, notes } in totals(takeoff) {
        page.head(&head);
        counts.iter().for_each(|(count, what)| page.counted(*count, what));
        notes.iter().for_each(|note| page.text("  ", "  ", note));
    }
    bring(&mut page, takeoff, shown);
    if let Some(bid) = &takeoff.bid {
        bid::show(&mut page, bid, shown);
    }
    findings(&mut page, takeoff);
    assumptions(&mut page, takeoff);
    survey(&mut page, takeoff);
    page.head("Cautions");
    for caution in &takeoff.cautions {
        page.text("  - ", "    ", caution);
    }
    page.done()
}

fn slope_line(slope: &SlopeTakeoff, shown: Quantities) -> String {
    let courses = words::count(slope.courses.len() as u64, "course", "courses");
    let posts = words::count(slope.posts.len() as u64, "post", "posts");
    format!("{}: pitch {}, {}, {courses}, {posts}", slope.name, slope.pitch, shown.area(slope.area_mm2))
}

fn bring(page: &mut Page, takeoff: &Takeoff, shown: Quantities) {
    page.head("Materials to bring");
    for line in &takeoff.materials {
        let amount = shown.amount(line.bring, line.unit);
        page.text(&format!("  {amount:>16}  "), &" ".repeat(22), &material(line, shown));
    }
    let level = words::percent(takeoff.service_level);
    page.head(&format!("Spare tiles among them, enough with a probability of {level}"));
    for spares in &takeoff.spares {
        page.text("  ", "      ", &spare(spares, takeoff.display));
    }
}

fn material(line: &MaterialLine, shown: Quantities) -> String {
    if line.waste == 0.0 {
        return line.item.name();
    }
    let need = shown.amount(line.need, line.unit);
    let each = if line.unit == Unit::Each { " pieces" } else { "" };
    format!("{} (need {need}{each}, waste {})", line.item, words::percent(line.waste))
}

/// The spares of one kind of piece, and what they are made of.
pub(super) fn spare(spares: &TileSpares, display: Display) -> String {
    let TileSpares { tile, spares, weight_g, salvageable, least_cost, .. } = spares;
    let mut parts = vec![format!("{} for breakage", spares.used_at_level)];
    if spares.for_severed > 0 {
        parts.push(format!("{} for tiles that can't be cut in one piece", spares.for_severed));
    }
    if spares.on_hand > 0 {
        parts.push(format!("{} on hand", spares.on_hand));
    }
    if spares.harvested > 0 {
        parts.push(format!("{} salvaged from under the arrays", spares.harvested));
    }
    let (bring, parts, chance) =
        (spares.spares, parts.join(", "), words::chance(spares.stockout_probability));
    let weight = weight_g.map_or(String::new(), |grams| {
        let weight = Weight::from_grams(grams * bring as f64);
        let shown = match display {
            Display::Imperial => weight.imperial(0),
            Display::Metric => weight.metric(0),
        };
        format!(", {shown}")
    });
    let could = match (*salvageable).min(spares.harvested + bring) - spares.harvested {
        0 => String::new(),
        more => format!("; {more} could be taken from under the arrays"),
    };
    let cheapest = least_cost.as_ref().map_or(String::new(), |least| {
        let LeastCost { currency, cost_of_short, spares, .. } = least;
        format!("; at {cost_of_short} {currency} a tile short the least expected cost is with {spares}")
    });
    format!("{tile}: {bring} ({parts}){weight}; chance of running short {chance}{cheapest}{could}")
}

fn findings(page: &mut Page, takeoff: &Takeoff) {
    let findings = &takeoff.findings;
    if findings.is_empty() {
        page.head("Findings: none");
        return;
    }
    page.head(&format!("Findings: {}. Check before ordering", findings.len()));
    for (code, group) in by_code(findings) {
        page.text("  ", "    ", &format!("{code} ({})", group.len()));
        let [first, others @ ..] = group.as_slice() else { continue };
        page.text("    ", "    ", &format!("{}.", first.message));
        if let Some(same_at) = places(takeoff, others) {
            page.text("    ", "    ", &format!("Same at {same_at}."));
        }
        if !first.help.is_empty() {
            page.text("    ", "    ", &format!("Fix: {}.", first.help));
        }
    }
}

/// The first places of some findings by name, and the number of the others; `None` where there is none.
fn places(takeoff: &Takeoff, findings: &[&Problem]) -> Option<String> {
    let named: Vec<String> =
        findings.iter().filter_map(|finding| place(takeoff, &finding.path)).take(PLACES).collect();
    match findings.len() - named.len() {
        0 if named.is_empty() => None,
        0 => Some(named.join(", ")),
        more if named.is_empty() => Some(format!("{more} more, listed in report.html")),
        more => Some(format!("{} and {more} more, listed in report.html", named.join(", "))),
    }
}

fn assumptions(page: &mut Page, takeoff: &Takeoff) {
    let all = takeoff.assumptions.len();
    let defaults = takeoff.assumptions.iter().filter(|assumption| !assumption.set_by_job).count();
    page.head(&format!("Assumptions: {all}"));
    let text =
        format!("{defaults} are defaults that the job file leaves alone. All are listed in takeoff.json.");
    page.text("  ", "  ", &text);
}

fn survey(page: &mut Page, takeoff: &Takeoff) {
    let open: Vec<_> = takeoff.survey.iter().filter(|answer| answer.is_open()).collect();
    if open.is_empty() {
        return;
    }
    page.head("Not yet asked on the survey");
    for question in open {
        page.text("  - ", "    ", &question.asks);
    }
}
