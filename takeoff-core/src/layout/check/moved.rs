//! Whether an array lies where it may.
use super::codes::{ARRAY_OFF_SLOPE, ARRAYS_OVERLAP, SHIFT};
use super::laid::Laid;
use crate::model::{Containment, Problem};
use crate::roof::outline_of;
use crate::units::Length;

impl Laid<'_> {
    /// An array is moved within its shift; one that is moved still lies on its slope, and over no other.
    pub(super) fn moves(&self) -> Vec<Problem> {
        let (from, to, shift) = (self.array.at, self.moved.at, self.array.shift);
        let (u, v) = (to.u - from.u, to.v - from.v);
        let ways = [
            ("left", -u, shift.left),
            ("right", u, shift.right),
            ("down", -v, shift.down),
            ("up", v, shift.up),
        ];
        let too_far = ways.iter().filter(|(_, by, most)| *by > (*most).max(Length::ZERO));
        let mut found: Vec<Problem> = too_far
            .map(|&(way, by, most)| {
                let what = format!("moved {way} by {}, and may be by {}", self.show(by), self.show(most));
                self.error(SHIFT, what, "move it less, or allow a greater shift")
            })
            .collect();
        if from == to {
            return found;
        }
        if Containment::of(self.moved.bounds(), &outline_of(self.slope)) != Containment::On {
            let what = "moved off the slope, or over a hole".to_owned();
            found.push(self.error(ARRAY_OFF_SLOPE, what, "move it less"));
        }
        let others = self.laid.arrays.iter().filter(|other| other.name != self.moved.name);
        for other in others.filter(|other| other.bounds().meets(&self.moved.bounds())) {
            let what = format!("moved over the array `{}`", other.name);
            found.push(self.error(ARRAYS_OVERLAP, what, "move one of them less"));
        }
        found
    }
}
