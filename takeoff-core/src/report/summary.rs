//! The summary on screen: what a stranger to the job has to know, in 80 columns.
use std::collections::BTreeMap;

use super::plain::{columns, number, printable, wrap};
use super::quantity::Quantities;
use super::words;
use crate::job::{Display, Problem};
use crate::takeoff::{MaterialLine, SlopeTakeoff, Takeoff, TileSpares, Unit};
use crate::units::Weight;

/// Columns of a line at most.
const WIDTH: usize = 80;
/// Places of a finding that are named; the others are counted.
const PLACES: usize = 3;

/// The summary of a takeoff: lines of at most 80 columns, each ended by a line feed.
///
/// # Example
///
/// ```
/// use takeoff_core::{api::read_and_take_off, job::Files, report::summary};
/// let job = include_str!("../../../fixtures/plain-gable/job.json");
/// let summary = summary(&read_and_take_off(job, &Files::new()).unwrap());
/// assert!(summary.lines().all(|line| line.chars().count() <= 80));
/// ```
pub fn summary(takeoff: &Takeoff) -> String {
    let shown = Quantities(takeoff.display);
    let mut page = Page::default();
    page.text("", "", &format!("{}: takeoff of posts through a tile roof", takeoff.job));
    page.lines.push("=".repeat(page.lines.iter().map(|line| columns(line)).max().unwrap_or(0)));
    page.head("Slopes");
    for slope in &takeoff.slopes {
        page.text("  ", "      ", &slope_line(slope, shown));
    }
    posts(&mut page, takeoff);
    tiles(&mut page, takeoff, shown);
    deck(&mut page, takeoff, shown);
    bring(&mut page, takeoff, shown);
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

fn posts(page: &mut Page, takeoff: &Takeoff) {
    page.head(&format!("Posts: {}", takeoff.counts.posts));
    let posts = || takeoff.slopes.iter().flat_map(|slope| &slope.posts);
    for situation in words::SITUATIONS {
        let count = posts().filter(|post| post.situation == situation).count() as u64;
        if count > 0 {
            page.counted(count, words::situation(situation));
        }
    }
    let better = posts().filter(|post| post.nearest.is_some()).count() as u64;
    if better > 0 {
        let have = if better == 1 { "has" } else { "have" };
        let text = format!(
            "{} {have} a better place nearby: see nearest_v in posts.csv.",
            words::count(better, "post", "posts")
        );
        page.text("  ", "  ", &text);
    }
}

fn tiles(page: &mut Page, takeoff: &Takeoff, shown: Quantities) {
    let counts = &takeoff.counts;
    page.head(&format!("Tiles cut: {}", counts.holes + counts.notches + counts.corners + counts.severed));
    page.counted(counts.holes, "with a hole");
    page.counted(counts.notches, "with a notch, out through one edge");
    page.counted(counts.corners, "with a corner off");
    page.counted(counts.severed, "severed: no sound piece remains, new tiles make it up");
    page.text(
        "  ",
        "  ",
        &format!("Path of the blade through tile: {}.", shown.length(counts.blade_path_mm)),
    );
    page.head("Tiles handled");
    page.counted(counts.removed, "taken up and laid back, cut ones included");
    page.counted(counts.loosened, "loosened in place");
    let tiles = || takeoff.slopes.iter().flat_map(|slope| &slope.tiles);
    let refastened = tiles().filter(|tile| tile.refasten).count() as u64;
    let excluded = tiles().filter(|tile| tile.excluded).count() as u64;
    page.counted_if_any(refastened, "of them refastened, near an edge of the roof");
    page.counted_if_any(excluded, "set fast and not to be loosened: excluded");
}

fn deck(page: &mut Page, takeoff: &Takeoff, shown: Quantities) {
    let counts = &takeoff.counts;
    page.head("Deck work");
    page.counted(counts.tucked, "flashings tucked under the sheet above");
    let patches = words::count(counts.patches, "felt patch", "felt patches");
    page.counted(counts.patched, &format!("flashings patched, with {patches}"));
    let slopes = &takeoff.slopes;
    let battens = slopes.iter().map(|slope| slope.battens.len() as u64).sum();
    let blocking = slopes.iter().map(|slope| slope.blocking.len() as u64).sum();
    page.counted_if_any(battens, "pieces of batten cut out and reset");
    page.counted_if_any(blocking, "blocking boards between rafters");
    let trim: f64 = slopes.iter().flat_map(|slope| &slope.trim).map(|trim| trim.length_mm).sum();
    if trim > 0.0 {
        page.text("  ", "  ", &format!("Ridge, hip and rake trim taken up: {}.", shown.length(trim)));
    }
}

fn bring(page: &mut Page, takeoff: &Takeoff, shown: Quantities) {
    page.head("Materials to bring");
    for line in &takeoff.materials {
        let amount = shown.amount(line.bring, line.unit);
        page.text(&format!("  {amount:>16}  "), &" ".repeat(22), &material(line, shown));
    }
    let level = percent(takeoff.service_level);
    page.head(&format!("Spare tiles among them, enough with a probability of {level}"));
    for spares in &takeoff.spares {
        page.text("  ", "      ", &spare(spares, takeoff.display));
    }
}

fn material(line: &MaterialLine, shown: Quantities) -> String {
    if line.waste == 0.0 {
        return line.item.clone();
    }
    let need = shown.amount(line.need, line.unit);
    let each = if line.unit == Unit::Each { " pieces" } else { "" };
    format!("{} (need {need}{each}, waste {})", line.item, percent(line.waste))
}

fn spare(spares: &TileSpares, display: Display) -> String {
    let TileSpares { tile, spares, weight_g, .. } = spares;
    let mut parts = vec![format!("{} for breakage", spares.used_at_level)];
    if spares.for_severed > 0 {
        parts.push(format!("{} for severed tiles", spares.for_severed));
    }
    if spares.on_hand > 0 {
        parts.push(format!("{} on hand", spares.on_hand));
    }
    let (bring, parts, chance) = (spares.spares, parts.join(", "), chance(spares.chance_short));
    let weight = weight_g.map_or(String::new(), |grams| {
        let weight = Weight::from_grams(grams * bring as f64);
        let shown = match display {
            Display::Imperial => weight.imperial(0),
            Display::Metric => weight.metric(0),
        };
        format!(", {shown}")
    });
    format!("{tile}: {bring} ({parts}){weight}; chance of running short {chance}")
}

fn findings(page: &mut Page, takeoff: &Takeoff) {
    let findings = &takeoff.findings;
    if findings.is_empty() {
        page.head("Findings: none");
        return;
    }
    let mut by_code: BTreeMap<&str, Vec<&Problem>> = BTreeMap::new();
    for finding in findings {
        by_code.entry(&finding.code).or_default().push(finding);
    }
    page.head(&format!("Findings: {}. Odd but real: look before you order", findings.len()));
    for (code, group) in by_code {
        page.text("  ", "    ", &format!("{code} ({})", group.len()));
        let [first, others @ ..] = group.as_slice() else { continue };
        page.text("    ", "    ", &format!("{}.", first.message));
        if !others.is_empty() {
            page.text("    ", "    ", &format!("The like: {}.", places(takeoff, others)));
        }
        if !first.help.is_empty() {
            page.text("    ", "    ", &format!("What helps: {}.", first.help));
        }
    }
}

/// The first places of some findings, and how many more there are.
fn places(takeoff: &Takeoff, findings: &[&Problem]) -> String {
    let named = findings.iter().take(PLACES).map(|finding| place(takeoff, &finding.path));
    let named = named.collect::<Vec<_>>().join(", ");
    match findings.len().saturating_sub(PLACES) {
        0 => named,
        more => format!("{named} and {more} more in takeoff.json"),
    }
}

/// A place in the job file by its names, where it is a post: `south A1`; else as the JSON Pointer it is.
fn place(takeoff: &Takeoff, path: &str) -> String {
    let post = || {
        let mut steps = path.split('/').skip(1);
        let mut index =
            |list| if steps.next() == Some(list) { steps.next()?.parse::<usize>().ok() } else { None };
        let (slope, post) = (index("slopes")?, index("posts")?);
        let slope = takeoff.slopes.get(slope)?;
        Some(format!("{} {}", slope.name, slope.posts.get(post)?.name))
    };
    post().unwrap_or_else(|| path.to_owned())
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
    let open: Vec<&str> = takeoff
        .survey
        .iter()
        .filter(|answer| answer.answer.as_ref().is_none_or(|text| text.trim().is_empty()))
        .map(|answer| answer.asks.as_str())
        .collect();
    if open.is_empty() {
        return;
    }
    page.head("Not yet asked on the survey");
    for question in open {
        page.text("  - ", "    ", question);
    }
}

/// `95 %`, with as many decimals as are needed.
fn percent(share: f64) -> String {
    format!("{} %", number((share * 1e6).round() / 1e4))
}

/// A probability to a tenth of a percent.
fn chance(probability: f64) -> String {
    match probability {
        p if p <= 0.0 => "0 %".to_owned(),
        p if p < 0.001 => "under 0.1 %".to_owned(),
        p => format!("{:.1} %", p * 100.0),
    }
}

/// Lines of text that never pass the width.
#[derive(Default)]
struct Page {
    lines: Vec<String>,
}

impl Page {
    /// A blank line and a heading.
    fn head(&mut self, text: &str) {
        self.lines.push(String::new());
        self.text("", "", text);
    }

    /// A count with what it counts.
    fn counted(&mut self, count: u64, what: &str) {
        self.text(&format!("  {count:>6}  "), "          ", what);
    }

    /// The same, where there are any.
    fn counted_if_any(&mut self, count: u64, what: &str) {
        if count > 0 {
            self.counted(count, what);
        }
    }

    /// A paragraph: its first line begins with `first`, the others with `rest`.
    fn text(&mut self, first: &str, rest: &str, text: &str) {
        self.lines.extend(wrap(first, rest, &printable(text), WIDTH));
    }

    fn done(self) -> String {
        self.lines.iter().flat_map(|line| [line.as_str(), "\n"]).collect()
    }
}
