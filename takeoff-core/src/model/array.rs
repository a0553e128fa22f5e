//! Arrays of modules, parallel to the slope.
use super::{Rails, Shift};
use crate::geometry::{Point, Polygon, Rect, SlopePoint, grid};
use crate::units::Length;

/// Modules in columns and rows, parallel to the slope.
#[derive(Clone, Debug)]
pub struct Array {
    pub(crate) name: String,
    /// The lower left corner of the lowest left module.
    pub(crate) at: SlopePoint,
    /// Width of a module as laid, along the eave.
    pub(crate) module_width: Length,
    /// Height of a module as laid, up the slope.
    pub(crate) module_height: Length,
    /// Modules along the eave; 1 or more.
    pub(crate) columns: u32,
    /// Modules up the slope; 1 or more.
    pub(crate) rows: u32,
    /// From module to module along the eave.
    pub(crate) column_gap: Length,
    /// From module to module up the slope.
    pub(crate) row_gap: Length,
    /// Reach within which a layout may move it.
    pub(crate) shift: Shift,
    /// Rails under its modules; `None` where a layout leaves it alone.
    pub(crate) rails: Option<Rails>,
}

/// Position of an array's rectangle relative to its slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Containment {
    /// Wholly on the slope.
    On,
    /// In part beyond the outline, or over a hole.
    Beyond,
    /// Nowhere on the slope.
    Off,
}

impl Array {
    /// Number of rails: one per clamp window in each row of modules.
    pub fn rail_count(&self) -> usize {
        self.rails.as_ref().map_or(0, |rails| self.rows as usize * rails.clamps.len())
    }

    /// The rectangle of all its modules, the gaps between them included.
    ///
    /// # Example
    ///
    /// Three columns of modules 40 in wide, 1 in apart, are `3 · 40 + 2 · 1 = 122 in` wide.
    pub fn bounds(&self) -> Rect {
        let at = Point::from(self.at);
        let [width, height] = [
            across(self.columns, self.module_width, self.column_gap),
            across(self.rows, self.module_height, self.row_gap),
        ];
        Rect::new(at.u, at.v, at.u + grid(width), at.v + grid(height))
    }

    /// Whether a point lies below it; its edge counts.
    pub fn covers(&self, point: Point) -> bool {
        let Rect { left, lower, right, upper } = self.bounds();
        (left..=right).contains(&point.u) && (lower..=upper).contains(&point.v)
    }

    /// The rectangle of all that it may cover, wherever a layout moves it.
    ///
    /// # Example
    ///
    /// An array 122 in wide from 12 in on, with a shift of 6 in to the left and 1 in to the right, stays from 6 to 135 in.
    pub fn swept(&self) -> Rect {
        let Rect { left, lower, right, upper } = self.bounds();
        let Shift { left: to_left, right: to_right, down, up } = self.shift;
        Rect::new(left - grid(to_left), lower - grid(down), right + grid(to_right), upper + grid(up))
    }
}

impl Containment {
    /// Position of a rectangle relative to an outline with holes.
    pub fn new(bounds: Rect, outline: &Polygon) -> Containment {
        if outline.edges().any(|edge| bounds.meets_segment(&edge)) {
            return Containment::Beyond;
        }
        // No edge runs through it: all of it is where its middle is.
        let middle = Point::new((bounds.left + bounds.right) / 2, (bounds.lower + bounds.upper) / 2);
        if outline.contains(middle) { Containment::On } else { Containment::Off }
    }
}

/// Extent of parts in a row, with gaps between them.
fn across(count: u32, part: Length, gap: Length) -> Length {
    let nm = |length: Length, count: u32| length.nm().saturating_mul(count.into());
    Length::from_nm(nm(part, count).saturating_add(nm(gap, count.saturating_sub(1))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{at, hip, len};

    fn array(u: &str, v: &str) -> Array {
        Array {
            name: "field".into(),
            at: at(u, v),
            module_width: len("40 in"),
            module_height: len("60 in"),
            columns: 3,
            rows: 1,
            column_gap: len("1 in"),
            row_gap: len("1 in"),
            shift: Shift::default(),
            rails: None,
        }
    }

    #[test]
    fn gaps_lie_between_modules_only() {
        let bounds = array("1 ft", "2 ft").bounds();
        assert_eq!(bounds.mm(), [304.8, 609.6, 304.8 + 122.0 * 25.4, 609.6 + 60.0 * 25.4]);
        assert!(array("1 ft", "2 ft").covers(at("1 ft", "84 in").into()));
        assert!(!array("1 ft", "2 ft").covers(at("1 ft", "84.01 in").into()));
    }

    #[test]
    fn a_shift_sweeps_a_rectangle() {
        let shift = Shift { left: len("6 in"), right: len("1 in"), down: Length::ZERO, up: len("2 in") };
        let swept = Array { shift, ..array("1 ft", "2 ft") }.swept();
        let [left, lower, right, upper] = ["6 in", "24 in", "135 in", "86 in"].map(|side| grid(len(side)));
        assert_eq!(swept, Rect::new(left, lower, right, upper));
        assert_eq!(array("1 ft", "2 ft").swept(), array("1 ft", "2 ft").bounds());
    }

    /// The hip is 30 ft along the eave with hips at 45°, and a chimney from 13 ft 5 in on at 5 ft.
    #[test]
    fn an_array_lies_on_beyond_or_off_a_slope() {
        let slope = hip();
        let rings = std::iter::once(&slope.outline).chain(&slope.holes);
        let outline = Polygon::new(rings.map(|ring| ring.iter().map(|&p| p.into()).collect()).collect());
        let cases = [
            // Its upper left corner is on the hip, its upper edge on the chimney's: touching is not meeting.
            ("5 ft", "0", Containment::On),
            ("4.99 ft", "0", Containment::Beyond),
            ("13 ft", "1 in", Containment::Beyond),
            ("-10.2 ft", "0", Containment::Off),
            ("40 ft", "0", Containment::Off),
        ];
        for (u, v, lies) in cases {
            assert_eq!(Containment::new(array(u, v).bounds(), &outline), lies, "{u} {v}");
        }
    }
}
