//! Under the rows: the sizes with their letters, what the lines mean, and the title.
use super::super::markup::Markup;
use super::super::{plain, words};
use super::{Drawing, FELT, HAIR, INK, PLAIN, SMALL, THICK, THIN, WIDTH};
use crate::model::Display;

/// Distance of two lines on paper, mm.
const LINE: f64 = 5.2;
/// Left edges of the columns on paper, mm: sizes, lines, title.
const COLUMNS: [f64; 3] = [14.0, 104.0, 160.0];
/// Lines of sizes in a column; more go beside them.
const SIZES: usize = 6;
/// Height of the foot on paper, mm.
pub(super) const HEIGHT: f64 = 49.0;

/// Draws the foot.
pub(super) fn draw(svg: &mut Markup, drawing: &Drawing<'_>, job: &str, fits_page: bool) {
    svg.tag("g").with("class", "foot").with("fill", INK).with("font-size", drawing.mm(PLAIN)).open();
    let top = drawing.foot();
    let [left, right] = [COLUMNS[0], WIDTH - 14.0].map(|x| drawing.mm(x));
    svg.tag("path")
        .with("d", format!("M{left:.1} {top:.1}H{right:.1}"))
        .with("stroke", INK)
        .with("stroke-width", drawing.mm(THIN))
        .empty();
    sizes(svg, drawing);
    lines(svg, drawing);
    title(svg, drawing, job, fits_page);
    svg.close("g");
}

/// Text at a place of the foot, on paper.
fn text(
    svg: &mut Markup,
    drawing: &Drawing<'_>,
    [right, down]: [f64; 2],
    size: f64,
    weight: &str,
    text: &str,
) {
    svg.tag("text")
        .with("x", drawing.mm(right))
        .with("y", drawing.foot() + drawing.mm(down))
        .with("font-size", drawing.mm(size))
        .with("font-weight", weight)
        .text(text);
}

/// `A  18 × 28 in (6)`.
fn sizes(svg: &mut Markup, drawing: &Drawing<'_>) {
    text(svg, drawing, [COLUMNS[0], 6.0], PLAIN, "bold", "PIECES, ALONG THE SHEET × ACROSS");
    let room = 2 * SIZES;
    let all = drawing.sizes.len();
    let named = if all > room { room - 1 } else { all };
    for (number, size) in drawing.sizes.iter().take(named).enumerate() {
        let at = place(number);
        let [along, across] = [size.along_mm, size.across_mm].map(|mm| drawing.shown.short_length(mm));
        text(svg, drawing, at, PLAIN, "bold", &size.letter);
        text(
            svg,
            drawing,
            [at[0] + 6.0, at[1]],
            PLAIN,
            "normal",
            &format!("{along} × {across} ({})", size.count),
        );
    }
    if all > named {
        let more = format!("and {} more sizes: see cutting.csv", all - named);
        text(svg, drawing, place(named), PLAIN, "normal", &more);
    }
}

/// Position of a size.
fn place(number: usize) -> [f64; 2] {
    [COLUMNS[0] + 44.0 * (number / SIZES) as f64, 6.0 + LINE * (number % SIZES + 1) as f64]
}

/// Legend of lines and fills.
fn lines(svg: &mut Markup, drawing: &Drawing<'_>) {
    text(svg, drawing, [COLUMNS[1], 6.0], PLAIN, "bold", "CUTS");
    let offcut = format!("url(#{}-offcut)", drawing.prefix);
    let samples: [(Option<&str>, f64, &str); 4] = [
        (None, THICK, "across the whole sheet: first"),
        (None, THIN, "within a section, edge to edge"),
        (Some(FELT), THIN, "piece: letter, slope/patch"),
        (Some(&offcut), HAIR, "left over"),
    ];
    for (number, (fill, stroke, words)) in samples.into_iter().enumerate() {
        let down = 6.0 + LINE * (number as f64 + 1.0);
        let [x, y] = [drawing.mm(COLUMNS[1]), drawing.foot() + drawing.mm(down)];
        let tag = match fill {
            Some(fill) => svg
                .tag("rect")
                .with("x", x)
                .with("y", y - drawing.mm(2.9))
                .with("width", drawing.mm(8.0))
                .with("height", drawing.mm(4.0))
                .with("fill", fill),
            None => svg
                .tag("path")
                .with("d", format!("M{x:.1} {:.1}h{:.1}", y - drawing.mm(0.9), drawing.mm(8.0))),
        };
        tag.with("stroke", INK).with("stroke-width", drawing.mm(stroke)).empty();
        text(svg, drawing, [COLUMNS[1] + 10.0, down], PLAIN, "normal", words);
    }
    if drawing.plan.pieces.iter().any(|piece| piece.turned) {
        let down = 6.0 + LINE * 5.0;
        text(svg, drawing, [COLUMNS[1] + 3.0, down], PLAIN, "bold", "↻");
        text(svg, drawing, [COLUMNS[1] + 10.0, down], PLAIN, "normal", "cut turned by 90°");
    }
}

/// Title, roll length used and printing instructions.
fn title(svg: &mut Markup, drawing: &Drawing<'_>, job: &str, fits_page: bool) {
    let Drawing { plan, shown, .. } = drawing;
    let room = |size: f64| ((WIDTH - 14.0 - COLUMNS[2]) / (0.56 * size)) as usize;
    let width = shown.short_length(plan.sheet_width_mm);
    let of = plan.roll_length_mm.map_or_else(
        || format!("{width} wide, an endless strip"),
        |length| format!("rolls of {width} × {}", shown.length(length)),
    );
    let rolls = words::count(plan.rolls.len() as u64, "roll", "rolls");
    let pieces = words::count(plan.pieces.len() as u64, "piece", "pieces");
    let used = shown.length(plan.length_used_mm);
    let proven = if plan.gap > 0.0 {
        format!(
            "no plan takes less than {} (gap {:.1} %)",
            shown.length(plan.length_bound_mm),
            100.0 * plan.gap
        )
    } else {
        "no plan takes less".to_owned()
    };
    let mut down = 2.0;
    let mut line = |step: f64, size: f64, weight: &str, words: &str| {
        down += step;
        text(svg, drawing, [COLUMNS[2], down], size, weight, &plain::shortened(words, room(size)));
    };
    line(4.5, 4.0, "bold", job);
    line(5.0, 3.2, "bold", &format!("cutting plan, {}", plan.underlayment));
    line(4.4, PLAIN, "normal", &format!("{pieces} from {rolls}; {of}"));
    line(3.8, PLAIN, "normal", &format!("{used} cut off; {proven}"));
    line(3.8, PLAIN, "normal", &format!("left over in it {}", shown.area(plan.offcuts_mm2)));
    line(3.8, PLAIN, "normal", &format!("scale 1 : {}", plain::number(drawing.scale)));
    scale_bar(svg, drawing, 33.5);
    let print = if fits_page {
        "Print at 100 % and check the bar."
    } else {
        "A long sheet: print at 100 % and check the bar."
    };
    text(svg, drawing, [COLUMNS[2], 43.0], SMALL, "normal", print);
    let caution = "Sizes are those laid on the roof: measure there before you cut.";
    text(svg, drawing, [COLUMNS[2], 46.0], SMALL, "normal", caution);
}

/// A bar of a round length in two parts.
fn scale_bar(svg: &mut Markup, drawing: &Drawing<'_>, down: f64) {
    let (unit, name) = match drawing.shown.0 {
        Display::Imperial => (304.8, "ft"),
        Display::Metric => (1000.0, "m"),
    };
    let lengths = [0.25, 0.5, 1.0, 2.0, 4.0, 10.0, 20.0, 40.0, 100.0];
    let longest = drawing.mm(50.0) / unit;
    let length = lengths.into_iter().take_while(|&length| length <= longest).last().unwrap_or(longest);
    let [left, top] = [drawing.mm(COLUMNS[2]), drawing.foot() + drawing.mm(down)];
    let half = length * unit / 2.0;
    for (part, fill) in [(0.0, INK), (1.0, super::PAPER)] {
        svg.tag("rect")
            .with("x", left + part * half)
            .with("y", top - drawing.mm(1.6))
            .with("width", half)
            .with("height", drawing.mm(1.6))
            .with("fill", fill)
            .with("stroke", INK)
            .with("stroke-width", drawing.mm(HAIR))
            .empty();
    }
    let end = COLUMNS[2] + 2.0 * half / drawing.scale;
    text(svg, drawing, [COLUMNS[2], down + 2.8], SMALL, "normal", "0");
    text(svg, drawing, [end + 1.5, down], SMALL, "normal", &format!("{} {name}", plain::number(length)));
}
