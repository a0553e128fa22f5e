//! A sliding-window minimum.
use std::collections::VecDeque;

use crate::layout::objective::Objective;

/// The minimum over a window of a list whose ends only move forward, in amortised constant time.
pub(super) struct SlidingMinimum<'a> {
    list: &'a [Option<Objective>],
    /// Indices in the window, each with a lower value than all after it.
    kept: VecDeque<usize>,
    reached: usize,
}

impl<'a> SlidingMinimum<'a> {
    pub(super) fn new(list: &'a [Option<Objective>]) -> SlidingMinimum<'a> {
        SlidingMinimum { list, kept: VecDeque::new(), reached: 0 }
    }

    /// The minimum from index `first` up to `after`, excluded. Neither may be below its value in the call before.
    pub(super) fn over(&mut self, first: usize, after: usize) -> Option<Objective> {
        while self.reached < after {
            if let Some(value) = self.list[self.reached] {
                while self.kept.back().is_some_and(|&last| self.list[last].is_some_and(|last| last >= value))
                {
                    self.kept.pop_back();
                }
                self.kept.push_back(self.reached);
            }
            self.reached += 1;
        }
        while self.kept.front().is_some_and(|&index| index < first) {
            self.kept.pop_front();
        }
        self.kept.front().and_then(|&index| self.list[index])
    }
}
