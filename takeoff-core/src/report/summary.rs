//! The summary on screen: what a stranger to the job has to know, in 80 columns.
use std::collections::BTreeMap;

use super::plain::{columns, number, printable, wrap};
use super::quantity::Quantities;
use super::words;
use crate::job::Problem;
use crate::takeoff::{MaterialLine, SlopeTakeoff, Takeoff, TileSpares, Unit};

/// Columns of a line at most.
const WIDTH: usize = 80;
/// Places of a finding that are named; the others are counted.
const PLACES: usize = 3;

/// The summary of a takeoff: lines of at most 80 columns, each ended by a line feed.
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
    deck(&mut page, takeoff);
    bring(&mut page, takeoff, shown);
    findings(&mut page, &takeoff.findings);
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
    let excluded = takeoff.slopes.iter().flat_map(|slope| &slope.tiles).filter(|tile| tile.excluded).count();
    if excluded > 0 {
        page.counted(excluded as u64, "set fast and not to be loosened: excluded");
    }
}

fn deck(page: &mut Page, takeoff: &Takeoff) {
    let counts = &takeoff.counts;
    page.head("Deck flashings");
    page.counted(counts.tucked, "tucked under the sheet above");
    page.counted(
        counts.patched,
        &format!("patched, with {}", words::count(counts.patches, "felt patch", "felt patches")),
    );
}

fn bring(page: &mut Page, takeoff: &Takeoff, shown: Quantities) {
    page.head("Materials to bring");
    for line in &takeoff.materials {
        let amount = shown.amount(line.bring, line.unit);
        page.text(&format!("  {amount:>16}  "), &" ".repeat(22), &material(line, shown));
    }
    page.head(&format!("Spare tiles, enough with a probability of {}", percent(takeoff.service_level)));
    for spares in &takeoff.spares {
        page.text(&format!("  {:>16}  ", spares.spares.spares), &" ".repeat(22), &spare(spares));
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

fn spare(spares: &TileSpares) -> String {
    let TileSpares { tile, spares, .. } = spares;
    let mut parts = vec![format!("{} for breakage", spares.used_at_level)];
    if spares.for_severed > 0 {
        parts.push(format!("{} for severed tiles", spares.for_severed));
    }
    if spares.on_hand > 0 {
        parts.push(format!("{} on hand", spares.on_hand));
    }
    format!("{tile} ({}); chance of running short {}", parts.join(", "), chance(spares.chance_short))
}

fn findings(page: &mut Page, findings: &[Problem]) {
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
        for finding in group.iter().take(PLACES) {
            page.text("    - ", "      ", &format!("{} [{}]", finding.message, finding.path));
        }
        if group.len() > PLACES {
            page.text("    - ", "      ", &format!("and {} more: see takeoff.json", group.len() - PLACES));
        }
        if let Some(help) = group.first().map(|finding| finding.help.as_str()).filter(|help| !help.is_empty())
        {
            page.text("    ", "    ", &format!("What helps: {help}."));
        }
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

    /// A paragraph: its first line begins with `first`, the others with `rest`.
    fn text(&mut self, first: &str, rest: &str, text: &str) {
        self.lines.extend(wrap(first, rest, &printable(text), WIDTH));
    }

    fn done(self) -> String {
        self.lines.iter().flat_map(|line| [line.as_str(), "\n"]).collect()
    }
}
