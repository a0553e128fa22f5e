//! The paper: its scale, and where on it the slope stands.

/// Width and height that print on Letter and on A4, landscape, with 10 mm of margin.
const PAGE: [f64; 2] = [259.0, 190.0];
/// Room about the slope for dimensions: left, below, right, above.
const ROOM: [f64; 4] = [24.0, 30.0, 30.0, 13.0];
/// Height of the foot.
pub(super) const FOOT: f64 = 52.0;
/// A tile is drawn about so large or larger; a slope too big for that gets a bigger paper.
const LEAST_TILE: f64 = 3.0;
/// Scales of drawings are these times a power of ten.
const SCALES: [f64; 10] = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0];

/// The sheet of one slope. The drawing is in millimetres on the slope: `x = u`, `y = −v`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Paper {
    /// Millimetres on the slope for one on paper.
    pub(super) scale: f64,
    /// The drawn part of the slope: left, lower, right, upper.
    pub(super) slope: [f64; 4],
    /// Size on paper.
    pub(super) size: [f64; 2],
    /// The lesser of width and height of the usual tile's face, on the slope.
    pub(super) tile: f64,
}

impl Paper {
    /// The sheet of a slope with these bounds, whose usual tile face is `tile` wide or high.
    pub(super) fn new(slope: [f64; 4], tile: f64) -> Paper {
        let [left, lower, right, upper] = slope;
        let (width, height) = (right - left, upper - lower);
        let across = PAGE[0] - ROOM[0] - ROOM[2];
        let along = PAGE[1] - ROOM[1] - ROOM[3] - FOOT;
        let fits = (width / across).max(height / along);
        let legible = (tile / LEAST_TILE).max(1.0);
        let scale = if fits <= legible { scale_over(fits) } else { scale_under(legible) };
        let size =
            [(width / scale + ROOM[0] + ROOM[2]).max(PAGE[0]), height / scale + ROOM[1] + ROOM[3] + FOOT];
        Paper { scale, slope, size, tile }
    }

    /// The length on the slope of `paper` millimetres on paper.
    pub(super) fn mm(self, paper: f64) -> f64 {
        paper * self.scale
    }

    /// The length on the slope of `paper` millimetres on paper, at most this share of a tile.
    pub(super) fn beside_tiles(self, paper: f64, share: f64) -> f64 {
        self.mm(paper).min(share * self.tile)
    }

    /// Fits Letter and A4.
    pub(super) fn fits_page(self) -> bool {
        self.size[0] <= PAGE[0] && self.size[1] <= PAGE[1]
    }

    /// A `stroke-dasharray` of these lengths on paper.
    pub(super) fn dashes(self, paper: &[f64]) -> String {
        let lengths = paper.iter().map(|&length| format!("{:.1}", self.mm(length)));
        lengths.collect::<Vec<_>>().join(" ")
    }

    /// Left edge of the sheet, on the slope.
    pub(super) fn left(self) -> f64 {
        let [left, _, right, _] = self.slope;
        let drawn = right - left + self.mm(ROOM[0] + ROOM[2]);
        left - self.mm(ROOM[0]) - (self.mm(self.size[0]) - drawn) / 2.0
    }

    /// Upper edge of the sheet, on the slope.
    pub(super) fn top(self) -> f64 {
        self.slope[3] + self.mm(ROOM[3])
    }

    /// A point of the foot, which holds legend and title block: on paper from its upper left corner, to the
    /// right and down.
    pub(super) fn foot(self, right: f64, down: f64) -> [f64; 2] {
        [self.left() + self.mm(right), self.top() - self.mm(self.size[1] - FOOT + down)]
    }
}

/// The least scale that is not below this one.
fn scale_over(scale: f64) -> f64 {
    scales().find(|&nice| nice >= scale).unwrap_or(scale)
}

/// The greatest scale that is not above this one.
fn scale_under(scale: f64) -> f64 {
    scales().take_while(|&nice| nice <= scale).last().unwrap_or(scale)
}

/// From 1:1 to 1:800 000, ascending.
fn scales() -> impl Iterator<Item = f64> {
    (0..6).flat_map(|power| SCALES.iter().map(move |scale| scale * f64::from(10_u32.pow(power))))
}
