//! Rafters by their centre lines.
use crate::geometry::SlopePoint;
use crate::num::round_div;
use crate::units::Length;

impl RafterLine {
    /// A rafter that runs straight up the slope.
    pub fn straight(u: Length) -> RafterLine {
        RafterLine { lower: u, upper: u }
    }
}

impl Rafters {
    /// The centre of a rafter at a height `v`, to the nanometre, half away from zero.
    ///
    /// # Example
    ///
    /// A rafter measured at 32 in at the eave and at 33 in at the ridge 200 in above: at 50 in it is at 32 1/4 in.
    pub fn centre(&self, rafter: usize, v: Length) -> Length {
        let RafterLine { lower, upper } = self.lines[rafter];
        let [from, to, low, high, v] = [lower, upper, self.low, self.high, v].map(|l| i128::from(l.nm()));
        let over = (high - low).max(1);
        let top = (to - from) * (v - low);
        Length::from_nm(lower.nm() + round_div(top, over) as i64)
    }

    /// Number of rafters to the left of a point; with `over`, those straight below it count too.
    pub fn left_of(&self, at: SlopePoint, over: bool) -> usize {
        let (mut from, mut to) = (0, self.lines.len());
        while from < to {
            let middle = from + (to - from) / 2;
            let centre = self.centre(middle, at.v);
            if centre < at.u || (over && centre == at.u) { from = middle + 1 } else { to = middle }
        }
        from
    }

    /// The clear distance between the faces of two rafters at a height; below zero where they overlap.
    pub fn clear_between(&self, left: usize, right: usize, v: Length) -> Length {
        self.centre(right, v) - self.centre(left, v) - self.width
    }
}

/// Rafters, by their centre lines, running up the slope.
#[derive(Clone, Debug, PartialEq)]
pub struct Rafters {
    /// Left to right; no two of them cross or overlap.
    pub(crate) lines: Vec<RafterLine>,
    /// Height at which `RafterLine::lower` is measured: the lowest `v` of the outline.
    pub(crate) low: Length,
    /// Height at which `RafterLine::upper` is measured: the highest `v` of the outline.
    pub(crate) high: Length,
    pub(crate) width: Length,
    /// Down from the deck.
    pub(crate) depth: Option<Length>,
    pub(crate) specific_gravity: Option<f64>,
}

/// The centre line of a rafter: straight up the slope, or crooked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RafterLine {
    /// `u` at the slope's lowest place.
    pub lower: Length,
    /// `u` at its highest place.
    pub upper: Length,
}
