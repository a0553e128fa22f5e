//! Axes of shifts.
use super::super::markup::Markup;
use super::super::quantity::Quantities;
use super::{INK, PLOT, text};
use crate::layout::ShiftMap;
use crate::model::Display;

/// The most that the map is wide and high, and a cell.
const MOST: f64 = 340.0;
const CELL: f64 = 56.0;
/// Letters of ticks have room for so many.
const TICKS: f64 = 6.0;

/// Both ways of a map.
pub(super) struct Axes {
    pub(super) right: Axis,
    pub(super) up: Axis,
    shown: Quantities,
}

/// The shifts of one way, in cells of equal size.
pub(super) struct Axis {
    first: f64,
    last: f64,
    pub(super) cells: usize,
    /// The size of a cell.
    pub(super) cell: f64,
}

impl Axis {
    fn new(shifts_mm: &[f64]) -> Axis {
        let cells = shifts_mm.len().max(1);
        // Whole tenths: what is drawn has no finer ones.
        let cell = (10.0 * (MOST / cells as f64).min(CELL)).floor() / 10.0;
        let end = |shift: Option<&f64>| shift.copied().unwrap_or_default();
        Axis { first: end(shifts_mm.first()), last: end(shifts_mm.last()), cells, cell }
    }

    fn long(&self) -> f64 {
        self.cell * self.cells as f64
    }

    /// Distance of a shift from the map's lower or left side; a cell's shift is at its middle.
    fn at(&self, shift_mm: f64) -> f64 {
        let span = self.last - self.first;
        let share = if span > 0.0 { (shift_mm - self.first) / span } else { 0.0 };
        (share * (self.cells as f64 - 1.0) + 0.5) * self.cell
    }

    /// Round shifts, as many as have room; none where there is one place only.
    fn ticks(&self, display: Display) -> Vec<f64> {
        if self.cells == 1 {
            return Vec::new();
        }
        let (unit, steps): (f64, &[f64]) = match display {
            Display::Imperial => {
                (25.4, &[0.0625, 0.125, 0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 120.0, 240.0])
            }
            Display::Metric => {
                (1.0, &[1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0])
            }
        };
        let span = self.last - self.first;
        let Some(step) = steps.iter().map(|step| step * unit).find(|step| span <= TICKS * step) else {
            return vec![self.first, self.last];
        };
        let (from, to) = ((self.first / step).ceil() as i64, (self.last / step).floor() as i64);
        (from..=to).map(|number| number as f64 * step).collect()
    }
}

impl Axes {
    pub(super) fn new(map: &ShiftMap, shown: Quantities) -> Axes {
        Axes { right: Axis::new(&map.right_mm), up: Axis::new(&map.up_mm), shown }
    }

    /// Right and lower end of the map.
    pub(super) fn ends(&self) -> [f64; 2] {
        [PLOT[0] + self.right.long(), PLOT[1] + self.up.long()]
    }

    /// Position of a shift on the drawing.
    pub(super) fn place(&self, right_mm: f64, up_mm: f64) -> [f64; 2] {
        [PLOT[0] + self.right.at(right_mm), self.ends()[1] - self.up.at(up_mm)]
    }

    /// The frame, the ticks and what they mean.
    pub(super) fn draw(&self, svg: &mut Markup) {
        let ([left, upper], [right, lower]) = (PLOT, self.ends());
        svg.tag("rect")
            .with("x", left)
            .with("y", upper)
            .with("width", right - left)
            .with("height", lower - upper)
            .with("fill", "none")
            .with("stroke", INK)
            .empty();
        let mut way = String::new();
        for shift in self.right.ticks(self.shown.0) {
            let [x, _] = self.place(shift, self.up.first);
            way.push_str(&format!("M{x:.1} {lower:.1}v4"));
            text(svg, [x, lower + 16.0], "middle").text(&self.length(shift));
        }
        for shift in self.up.ticks(self.shown.0) {
            let [_, y] = self.place(self.right.first, shift);
            way.push_str(&format!("M{left:.1} {y:.1}h-4"));
            text(svg, [left - 7.0, y + 4.0], "end").text(&self.length(shift));
        }
        svg.tag("path").with("d", way).with("stroke", INK).empty();
        let [x, y] = [(left + right) / 2.0, (upper + lower) / 2.0];
        if let Some(along) = caption(&self.right, ["left", "right"]) {
            text(svg, [x, lower + 34.0], "middle").text(&along);
        }
        if let Some(up) = caption(&self.up, ["down", "up"]) {
            let turned = format!("translate(22 {y:.1}) rotate(-90)");
            text(svg, [0.0, 0.0], "middle").with("transform", turned).text(&up);
        }
    }

    fn length(&self, shift_mm: f64) -> String {
        if shift_mm == 0.0 { "0".to_owned() } else { self.shown.short_length(shift_mm.abs()) }
    }
}

/// `← moved left or right →`, of the ways that there are.
fn caption(axis: &Axis, [back, toward]: [&str; 2]) -> Option<String> {
    match (axis.first < 0.0, axis.last > 0.0) {
        (true, true) => Some(format!("← moved {back} or {toward} →")),
        (true, false) => Some(format!("← moved {back}")),
        (false, true) => Some(format!("moved {toward} →")),
        (false, false) => None,
    }
}
