//! The marks of the tape: posts go to whole sixteenths of an inch, or whole millimetres, where there is one.
use crate::geometry::grid;
use crate::model::Display;
use crate::units::Length;

/// The distance of the marks of a tape, in grid steps.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Graduations(i64);

impl Graduations {
    /// 1/16 in or 1 mm, as the job is shown.
    pub(crate) fn of(display: Display) -> Graduations {
        Graduations(grid(match display {
            Display::Imperial => Length::SIXTEENTH,
            Display::Metric => Length::MM,
        }))
    }

    /// From mark to mark.
    pub(crate) fn step(self) -> i64 {
        self.0
    }

    /// The mark at or above a place.
    pub(crate) fn from(self, place: i64) -> i64 {
        self.up_to(place + self.0 - 1)
    }

    /// The mark at or below a place.
    pub(crate) fn up_to(self, place: i64) -> i64 {
        place.div_euclid(self.0) * self.0
    }

    /// From the first mark of a stretch to its last; the stretch as it is where it has none.
    pub(crate) fn within(self, (from, to): (i64, i64)) -> (i64, i64) {
        let (first, last) = (self.from(from), self.up_to(to));
        if first <= last { (first, last) } else { (from, to) }
    }

    /// The mark nearest to `target` from `from` to `to`, of two equally near the lower; where there is none the whole
    /// nanometre at or below the target.
    pub(crate) fn nearest(self, target: i64, from: i64, to: i64) -> i64 {
        let target = 2 * target.clamp(from, to).div_euclid(2);
        let graduations =
            [self.up_to(target), self.from(target)].into_iter().filter(|mark| (from..=to).contains(mark));
        graduations.min_by_key(|mark| (mark - target).abs()).unwrap_or(target.max(from))
    }
}
