//! The place of an array.
use super::array::LaidArray;
use super::codes::{ARRAY_OFF_SLOPE, ARRAYS_OVERLAP, SHIFT};
use super::extent::Extent;
use crate::geometry::Polygon;
use crate::model::Problem;
use crate::units::Length;

impl LaidArray<'_> {
    /// An array is within its shift; an array that was moved is on its slope and over no other array.
    pub(super) fn shift(&self, outline: &Polygon) -> Vec<Problem> {
        let (from, to, shift) = (self.array.at, self.moved.at, self.array.shift);
        let (u, v) = (to.u - from.u, to.v - from.v);
        let sides = [
            ("left", -u, shift.left),
            ("right", u, shift.right),
            ("down", -v, shift.down),
            ("up", v, shift.up),
        ];
        let too_far = sides.iter().filter(|(_, by, most)| *by > (*most).max(Length::ZERO));
        let mut found: Vec<Problem> = too_far
            .map(|&(side, by, most)| {
                let what = format!("moved {side} by {}; the limit is {}", self.show(by), self.show(most));
                self.problem(SHIFT, what, "move it less, or allow a greater shift")
            })
            .collect();
        if from == to {
            return found;
        }
        let extent = Extent::new(self.moved);
        if !extent.is_on(outline) {
            let what = "moved off the slope, or over a hole".to_owned();
            found.push(self.problem(ARRAY_OFF_SLOPE, what, "move it less"));
        }
        let others = self.laid.arrays.iter().filter(|other| other.name != self.moved.name);
        for other in others.filter(|other| Extent::new(other).overlaps(&extent)) {
            let what = format!("moved over the array `{}`", other.name);
            found.push(self.problem(ARRAYS_OVERLAP, what, "move one of them less"));
        }
        found
    }
}
