//! The cutting plan of an underlayment as a drawing: the rolls to scale, row by row, with every piece in its place.
mod foot;
mod rows;
mod sizes;
mod stretch;

use super::markup::Markup;
use super::quantity::Quantities;
use super::words;
use crate::model::Display;
use crate::report::document::RollPlan;
use rows::{Row, rows};
use sizes::{Size, sizes};

/// Lines and letters.
const INK: &str = "#1d2733";
/// Nothing drawn.
const PAPER: &str = "#ffffff";
/// A piece.
const FELT: &str = "#d5e6ea";
/// Offcuts, hatched.
const OFFCUT: &str = "#f6f3ee";
/// The hatch of what is left over.
const HATCH: &str = "#a79f92";
/// Dimensions.
const DIMENSION: &str = "#55606c";
/// Stroke widths on paper, mm.
const HAIR: f64 = 0.1;
const THIN: f64 = 0.25;
const THICK: f64 = 0.6;
/// Letter sizes on paper, mm.
const SMALL: f64 = 2.1;
const PLAIN: f64 = 2.5;

/// Width that prints on Letter and on A4, landscape, with 10 mm of margin.
const WIDTH: f64 = 259.0;
/// Height that does.
const HEIGHT: f64 = 190.0;
/// Room left and right of the rows, and over the first.
const SIDE: f64 = 14.0;
const TOP: f64 = 6.0;
/// Room over a row for its heading and under it for the places of the cuts.
const HEADING: f64 = 5.0;
const PLACES: f64 = 5.0;
/// A sheet is drawn at most so wide, and so wide where pieces are many.
const SHEET: f64 = 27.0;
const NARROW_SHEET: f64 = 15.0;
const MANY: usize = 240;
/// Scales of drawings are these times a power of ten.
const SCALES: [f64; 10] = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0];

/// A cutting plan as SVG: `number` is its place in the list of plans, `of` the job that it is for.
///
/// The drawing's units are millimetres of sheet, its width and height are given for paper at the scale that the title
/// names. Heavy lines are the cuts across the whole sheet; their places are measured from the start of the roll. What is
/// left over is hatched, so the drawing reads in grey. Each piece is a group with `data-patch`, `data-start-mm`
/// and `data-edge-mm`.
///
/// # Example
///
/// ```
/// use takeoff_core::api::read_and_document;
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::model::Display;
/// use takeoff_core::report::roll_plan;
/// let patched = EXAMPLE.replace("3 ft 1 in", "5 ft");
/// let takeoff = read_and_document(&patched, &Files::new()).unwrap();
/// let svg = roll_plan(&takeoff.rolls[0], 0, &takeoff.job, Display::Imperial);
/// assert_eq!(svg.matches(" data-patch=").count(), takeoff.rolls[0].pieces.len());
/// ```
pub fn roll_plan(plan: &RollPlan, number: usize, of: &str, display: Display) -> String {
    draw(plan, of, display, &format!("rolls{}", number + 1))
}

/// Context shared by all parts of the drawing.
struct Drawing<'t> {
    plan: &'t RollPlan,
    sizes: Vec<Size>,
    rows: Vec<Row>,
    shown: Quantities,
    /// Millimetres of sheet for one on paper.
    scale: f64,
    prefix: &'t str,
}

impl Drawing<'_> {
    /// The length on the roll of `paper` millimetres on paper.
    fn mm(&self, paper: f64) -> f64 {
        paper * self.scale
    }

    /// Top of the drawn sheet in a row.
    fn top(&self, row: usize) -> f64 {
        let each = self.mm(HEADING + PLACES) + self.plan.sheet_width_mm;
        self.mm(TOP + HEADING) + row as f64 * each
    }

    /// Top of the foot.
    fn foot(&self) -> f64 {
        self.top(self.rows.len()) - self.mm(HEADING - 2.0)
    }

    /// Width and height on paper.
    fn paper(&self) -> [f64; 2] {
        let longest = self.rows.iter().map(|row| row.to - row.from).fold(0.0, f64::max);
        [(longest / self.scale + 2.0 * SIDE).max(WIDTH), self.foot() / self.scale + foot::HEIGHT]
    }
}

fn draw(plan: &RollPlan, of: &str, display: Display, prefix: &str) -> String {
    let widest = if plan.pieces.len() > MANY { NARROW_SHEET } else { SHEET };
    let scale = scale_over(plan.sheet_width_mm / widest);
    let rows = rows(plan, (WIDTH - 2.0 * SIDE) * scale);
    let drawing = Drawing { plan, sizes: sizes(plan), rows, shown: Quantities(display), scale, prefix };
    let [width, height] = drawing.paper();
    let mut svg = Markup::default();
    svg.tag("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", format!("{width:.1}mm"))
        .with("height", format!("{height:.1}mm"))
        .with("viewBox", format!("0 0 {:.1} {:.1}", drawing.mm(width), drawing.mm(height)))
        .with("font-family", "Helvetica, Arial, sans-serif")
        .with("role", "img")
        .with("aria-labelledby", format!("{prefix}-title {prefix}-desc"))
        .open();
    let title = format!("{of}: cutting plan of {}", plan.underlayment);
    svg.tag("title").with("id", format!("{prefix}-title")).text(&title);
    svg.tag("desc").with("id", format!("{prefix}-desc")).text(&description(&drawing));
    define_hatch(&mut svg, &drawing);
    svg.tag("rect")
        .with("x", 0.0)
        .with("y", 0.0)
        .with("width", drawing.mm(width))
        .with("height", drawing.mm(height))
        .with("fill", PAPER)
        .empty();
    for (number, row) in drawing.rows.iter().enumerate() {
        stretch::draw(&mut svg, &drawing, number, row);
    }
    foot::draw(&mut svg, &drawing, of, height <= HEIGHT && width <= WIDTH);
    svg.close("svg");
    svg.done()
}

/// The drawing in a few sentences, for those who hear it read.
fn description(drawing: &Drawing<'_>) -> String {
    let plan = drawing.plan;
    let pieces = words::count(plan.pieces.len() as u64, "piece", "pieces");
    let rolls = words::count(plan.rolls.len() as u64, "roll", "rolls");
    let used = drawing.shown.length(plan.length_used_mm);
    format!("{pieces} cut from {rolls}, {used} in all. Every cut goes from edge to edge of what is cut.")
}

fn define_hatch(svg: &mut Markup, drawing: &Drawing<'_>) {
    let step = drawing.mm(1.6);
    svg.tag("defs").open();
    svg.tag("pattern")
        .with("id", format!("{}-offcut", drawing.prefix))
        .with("patternUnits", "userSpaceOnUse")
        .with("width", step)
        .with("height", step)
        .with("patternTransform", "rotate(45)")
        .open();
    svg.tag("rect").with("width", step).with("height", step).with("fill", OFFCUT).empty();
    svg.tag("path")
        .with("d", format!("M0 0V{step:.1}"))
        .with("stroke", HATCH)
        .with("stroke-width", drawing.mm(0.3))
        .empty();
    svg.close("pattern");
    svg.close("defs");
}

/// The least scale that is not below this one.
fn scale_over(scale: f64) -> f64 {
    let scales =
        (0..6).flat_map(|power| SCALES.iter().map(move |scale| scale * f64::from(10_u32.pow(power))));
    scales.into_iter().find(|&nice| nice >= scale).unwrap_or(scale)
}
