//! One row: a stretch of a roll with its pieces, what is left over, and the cuts across.
use super::super::markup::Markup;
use super::super::plain;
use super::rows::Row;
use super::sizes::letter_of;
use super::{DIMENSION, Drawing, FELT, HAIR, INK, PLAIN, SIDE, SMALL, THICK, THIN};
use crate::report::document::{Offcut, PieceCut};

/// Width of a letter as a share of its size, about.
const LETTER: f64 = 0.56;

/// Draws a row.
pub(super) fn draw(svg: &mut Markup, drawing: &Drawing<'_>, number: usize, row: &Row) {
    let at = Stretch { drawing, row, top: drawing.top(number) };
    svg.tag("g").with("class", "row").with("fill", INK).open();
    at.heading(svg);
    let within =
        |roll: u64, section: u64| roll == row.roll && (row.sections[0]..=row.sections[1]).contains(&section);
    for offcut in drawing.plan.offcuts.iter().filter(|offcut| within(offcut.roll, offcut.section)) {
        at.offcut(svg, offcut);
    }
    for piece in drawing.plan.pieces.iter().filter(|piece| within(piece.roll, piece.section)) {
        at.piece(svg, piece);
    }
    at.cuts_across(svg);
    at.places(svg);
    svg.close("g");
}

struct Stretch<'s> {
    drawing: &'s Drawing<'s>,
    row: &'s Row,
    top: f64,
}

impl Stretch<'_> {
    /// A place along the roll, on the drawing.
    fn x(&self, along: f64) -> f64 {
        self.drawing.mm(SIDE) + along - self.row.from
    }

    /// A place across the roll, on the drawing: its edge is at the bottom.
    fn y(&self, across: f64) -> f64 {
        self.top + self.drawing.plan.sheet_width_mm - across
    }

    /// The roll's number, and the sheet's width beside it.
    fn heading(&self, svg: &mut Markup) {
        let Drawing { plan, shown, .. } = self.drawing;
        let rolls = plan.rolls.len();
        let mut text = format!("ROLL {} of {rolls}", self.row.roll);
        if self.row.from > 0.0 {
            text = format!("{text}, from {} on", shown.length(self.row.from));
        }
        let mm = |paper: f64| self.drawing.mm(paper);
        svg.tag("text")
            .with("x", self.x(self.row.from))
            .with("y", self.top - mm(1.4))
            .with("font-size", mm(PLAIN))
            .with("font-weight", "bold")
            .text(&text);
        let (x, y) = (self.x(self.row.from) - mm(3.0), self.top + plan.sheet_width_mm / 2.0);
        svg.tag("text")
            .with("transform", format!("translate({x:.1} {y:.1}) rotate(-90)"))
            .with("text-anchor", "middle")
            .with("font-size", mm(SMALL))
            .with("fill", DIMENSION)
            .text(&shown.short_length(plan.sheet_width_mm));
    }

    fn rectangle(&self, svg: &mut Markup, [start, edge, length, width]: [f64; 4], fill: &str, stroke: f64) {
        svg.tag("rect")
            .with("x", self.x(start))
            .with("y", self.y(edge + width))
            .with("width", length)
            .with("height", width)
            .with("fill", fill)
            .with("stroke", INK)
            .with("stroke-width", self.drawing.mm(stroke))
            .empty();
    }

    fn offcut(&self, svg: &mut Markup, offcut: &Offcut) {
        let place = [offcut.start_mm, offcut.edge_mm, offcut.length_mm, offcut.width_mm];
        self.rectangle(svg, place, &format!("url(#{}-offcut)", self.drawing.prefix), HAIR);
    }

    /// A piece with its size's letter, and its patch where there is room.
    fn piece(&self, svg: &mut Markup, piece: &PieceCut) {
        let place = [piece.start_mm, piece.edge_mm, piece.length_mm, piece.width_mm];
        svg.tag("g")
            .with("data-patch", piece.patch.as_str())
            .with("data-start-mm", piece.start_mm.to_string())
            .with("data-edge-mm", piece.edge_mm.to_string())
            .open();
        svg.tag("title").text(&self.description(piece));
        self.rectangle(svg, place, FELT, THIN);
        self.label(svg, piece);
        svg.close("g");
    }

    fn description(&self, piece: &PieceCut) -> String {
        let Drawing { shown, .. } = self.drawing;
        let [length, width, start, edge] =
            [piece.length_mm, piece.width_mm, piece.start_mm, piece.edge_mm].map(|mm| shown.short_length(mm));
        let turned = if piece.turned { ", turned" } else { "" };
        format!("{}: {length} × {width}{turned}, {start} from the start, {edge} from the edge", name(piece))
    }

    /// Letter and patch, upright or along the longer side.
    fn label(&self, svg: &mut Markup, piece: &PieceCut) {
        let scale = self.drawing.scale;
        let (length, width) = (piece.length_mm / scale, piece.width_mm / scale);
        let upright = width > length;
        let (long, short) = if upright { (width, length) } else { (length, width) };
        let turn = if upright { " rotate(-90)" } else { "" };
        let letter = letter_of(&self.drawing.sizes, piece);
        let mut lines: Vec<(String, f64, &str)> = Vec::new();
        let room = |size: f64| ((long - 1.0) / (LETTER * size)) as usize;
        let size = 3.0_f64.min(short - 0.6);
        if size >= 1.4 && room(size) >= letter.len() {
            let turned = if piece.turned { " ↻" } else { "" };
            lines.push((format!("{letter}{turned}"), size, "bold"));
        }
        if short >= 6.6 && room(SMALL) >= 4 {
            lines.push((plain::shortened(&name(piece), room(SMALL)), SMALL, "normal"));
        }
        let (x, y) =
            (self.x(piece.start_mm + piece.length_mm / 2.0), self.y(piece.edge_mm + piece.width_mm / 2.0));
        let between = if lines.len() > 1 { 1.7 } else { 0.0 };
        for (line, (text, size, weight)) in lines.into_iter().enumerate() {
            let down = if line == 0 { -between } else { between };
            svg.tag("text")
                .with("transform", format!("translate({x:.1} {y:.1}){turn}"))
                .with("y", self.drawing.mm(down + 0.36 * size))
                .with("text-anchor", "middle")
                .with("font-size", self.drawing.mm(size))
                .with("font-weight", weight)
                .text(&text);
        }
    }

    /// The cuts across the whole sheet, and its edges; after the last section a roll goes on, torn.
    fn cuts_across(&self, svg: &mut Markup) {
        let (upper, lower) = (self.y(self.drawing.plan.sheet_width_mm), self.y(0.0));
        let mut way = String::new();
        for place in self.cuts() {
            way.push_str(&format!("M{:.1} {upper:.1}V{lower:.1}", self.x(place)));
        }
        svg.tag("path")
            .with("d", way)
            .with("fill", "none")
            .with("stroke", INK)
            .with("stroke-width", self.drawing.mm(THICK))
            .empty();
        let end = self.x(self.row.to) + if self.row.goes_on { self.drawing.mm(6.0) } else { 0.0 };
        let start = self.x(self.row.from);
        svg.tag("path")
            .with("d", format!("M{start:.1} {upper:.1}H{end:.1}M{start:.1} {lower:.1}H{end:.1}"))
            .with("fill", "none")
            .with("stroke", INK)
            .with("stroke-width", self.drawing.mm(THIN))
            .empty();
        if self.row.goes_on {
            self.rest(svg, end, [upper, lower]);
        }
    }

    /// The torn end of what stays on the roll, and how long that is.
    fn rest(&self, svg: &mut Markup, end: f64, [upper, lower]: [f64; 2]) {
        let step = (lower - upper) / 6.0;
        let deep = self.drawing.mm(1.2);
        let tooth = |n: u8| {
            format!("L{:.1} {:.1}", end + if n % 2 == 1 { deep } else { -deep }, upper + f64::from(n) * step)
        };
        let teeth: String = (1..6).map(tooth).collect();
        svg.tag("path")
            .with("d", format!("M{end:.1} {upper:.1}{teeth}L{end:.1} {lower:.1}"))
            .with("fill", "none")
            .with("stroke", INK)
            .with("stroke-width", self.drawing.mm(HAIR * 2.0))
            .empty();
        let left = self.drawing.plan.rolls.iter().find(|roll| roll.roll == self.row.roll);
        if let Some(left) = left.and_then(|roll| roll.left_mm) {
            let (x, y) = (end - self.drawing.mm(3.2), f64::midpoint(upper, lower));
            svg.tag("text")
                .with("transform", format!("translate({x:.1} {y:.1}) rotate(-90)"))
                .with("text-anchor", "middle")
                .with("dy", "0.36em")
                .with("font-size", self.drawing.mm(SMALL))
                .with("fill", DIMENSION)
                .text(&format!("{} left", self.drawing.shown.length(left)));
        }
    }

    /// The places of the cuts across, from the start of the row to its end.
    fn cuts(&self) -> Vec<f64> {
        let sections = self.drawing.plan.sections.iter().filter(|section| {
            section.roll == self.row.roll
                && (self.row.sections[0]..=self.row.sections[1]).contains(&section.section)
        });
        std::iter::once(self.row.from)
            .chain(sections.map(|section| section.start_mm + section.length_mm))
            .collect()
    }

    /// Distances of the cuts across from the start of the roll, where there is room.
    fn places(&self, svg: &mut Markup) {
        let mut free = f64::NEG_INFINITY;
        let cuts = self.cuts();
        let last = cuts.len() - 1;
        let half = |text: &str| self.drawing.mm(plain::columns(text) as f64 * LETTER * SMALL / 2.0);
        let text = |place: f64| self.drawing.shown.length(place);
        let end = text(self.row.to);
        let before_end = self.x(self.row.to) - half(&end);
        for (number, &place) in cuts.iter().enumerate() {
            let (text, x) = (text(place), self.x(place));
            let half = half(&text);
            let fits = x - half >= free && (number == last || x + half + self.drawing.mm(1.0) <= before_end);
            if !fits && number != last {
                continue;
            }
            free = x + half + self.drawing.mm(1.0);
            svg.tag("text")
                .with("x", x)
                .with("y", self.y(0.0) + self.drawing.mm(3.2))
                .with("text-anchor", "middle")
                .with("font-size", self.drawing.mm(SMALL))
                .with("fill", DIMENSION)
                .text(&text);
        }
    }
}

/// The patch, with the number of its piece where it has several.
fn name(piece: &PieceCut) -> String {
    if piece.of > 1 {
        format!("{}, {} of {}", piece.patch, piece.piece, piece.of)
    } else {
        piece.patch.clone()
    }
}
