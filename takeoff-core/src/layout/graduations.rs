//! Tape graduations: posts go to whole sixteenths of an inch, or whole millimetres, where there is one.
use crate::geometry::grid;
use crate::model::Display;
use crate::units::Length;

/// The spacing of a tape's graduations, in grid steps.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Graduations(i64);

impl Graduations {
    /// 1/16 in for a job shown in imperial units, 1 mm for one in metric units.
    pub(crate) fn new(display: Display) -> Graduations {
        Graduations(grid(length(display)))
    }

    /// The spacing.
    pub(crate) fn step(self) -> i64 {
        self.0
    }

    /// The lowest graduation at or above a place.
    pub(crate) fn at_or_above(self, place: i64) -> i64 {
        self.at_or_below(place + self.0 - 1)
    }

    /// The highest graduation at or below a place.
    pub(crate) fn at_or_below(self, place: i64) -> i64 {
        place.div_euclid(self.0) * self.0
    }

    /// The range from the first to the last graduation of a range; the range itself where it has none.
    pub(crate) fn within(self, (from, to): (i64, i64)) -> (i64, i64) {
        let (first, last) = (self.at_or_above(from), self.at_or_below(to));
        if first <= last { (first, last) } else { (from, to) }
    }

    /// The graduation nearest to `target` from `from` to `to`, the lower of two equally near. Without a graduation in
    /// the range, the whole nanometre at or below the target.
    pub(crate) fn nearest(self, target: i64, from: i64, to: i64) -> i64 {
        let target = 2 * target.clamp(from, to).div_euclid(2);
        let beside = [self.at_or_below(target), self.at_or_above(target)];
        let inside = beside.into_iter().filter(|place| (from..=to).contains(place));
        inside.min_by_key(|place| (place - target).abs()).unwrap_or(target.max(from))
    }
}

/// From one graduation of a tape to the next.
pub(crate) fn length(display: Display) -> Length {
    match display {
        Display::Imperial => Length::SIXTEENTH,
        Display::Metric => Length::MM,
    }
}
