//! Constraints that give way.
use super::result::Constraint;
use crate::model::{Array, ClampWindow, Containment, Job, Post, Rails};
use crate::roof::outline_of;
use crate::units::Length;

impl Constraint {
    /// All of them.
    pub(super) const ALL: [Constraint; 11] = [
        Constraint::GreatestSpan,
        Constraint::GreatestOverhang,
        Constraint::ClampWindows,
        Constraint::Shift,
        Constraint::Setbacks,
        Constraint::LeastDistance,
        Constraint::LeastMargin,
        Constraint::Zones,
        Constraint::Stagger,
        Constraint::NoBlocking,
        Constraint::FixedPosts,
    ];

    /// Whether it is a length that can give way by so much.
    pub(super) fn is_length(self) -> bool {
        use Constraint::*;
        matches!(
            self,
            GreatestSpan | GreatestOverhang | ClampWindows | Shift | Setbacks | LeastDistance | LeastMargin
        )
    }

    /// The job with the constraint eased by a length, or dropped where it is none; `None` where it is not in force, or
    /// can't give way.
    ///
    /// A span and an overhang grow everywhere, in zones too; windows grow at both ends, but not beyond the module nor
    /// nearer to each other than the rails' least distance; an array's shift grows on all four sides, if the array stays
    /// on the slope and clear of others.
    pub(super) fn eased(self, job: &Job, by: Length) -> Option<Job> {
        let mut eased = job.clone();
        let mut changed = false;
        if self == Constraint::LeastMargin {
            let margin = &mut eased.practice.least_margin;
            changed = *margin > Length::ZERO;
            *margin = (*margin - by).max(Length::ZERO);
        }
        for slope in &mut eased.slopes {
            match self {
                Constraint::Setbacks => {
                    for setback in &mut slope.setbacks {
                        changed |= setback.least > Length::ZERO;
                        setback.least = (setback.least - by).max(Length::ZERO);
                    }
                }
                Constraint::FixedPosts => {
                    for Post { fixed, .. } in &mut slope.posts {
                        changed |= std::mem::take(fixed);
                    }
                }
                Constraint::Shift => {
                    for place in 0..slope.arrays.len() {
                        let wider = wider(&slope.arrays, place, by, &outline_of(slope));
                        changed |= wider.is_some();
                        if let Some(wider) = wider {
                            slope.arrays[place] = wider;
                        }
                    }
                }
                _ => {
                    for array in &mut slope.arrays {
                        let height = array.module_height;
                        let next_row = (array.rows > 1).then_some(array.row_gap);
                        if let Some(rails) = &mut array.rails {
                            changed |= self.ease_rails(rails, by, height, next_row);
                        }
                    }
                }
            }
        }
        changed.then_some(eased)
    }

    fn ease_rails(self, rails: &mut Rails, by: Length, height: Length, next_row: Option<Length>) -> bool {
        match self {
            Constraint::GreatestSpan => {
                rails.greatest_span = longer(rails.greatest_span, by);
                rails.zones.iter_mut().for_each(|zone| zone.greatest_span = longer(zone.greatest_span, by));
                true
            }
            Constraint::GreatestOverhang => {
                rails.greatest_overhang = longer(rails.greatest_overhang, by);
                rails
                    .zones
                    .iter_mut()
                    .for_each(|zone| zone.greatest_overhang = longer(zone.greatest_overhang, by));
                true
            }
            Constraint::ClampWindows => ease_windows(rails, by, height, next_row),
            Constraint::LeastDistance => {
                let before = rails.least_distance;
                rails.least_distance = (before - by).max(Length::ZERO);
                before > Length::ZERO
            }
            Constraint::Zones => !std::mem::take(&mut rails.zones).is_empty(),
            Constraint::Stagger => std::mem::replace(&mut rails.stagger, 1) > 1,
            Constraint::NoBlocking => !std::mem::replace(&mut rails.blocking, true),
            _ => false,
        }
    }
}

/// Wider windows, as far as modules and the least distance between rails allow.
fn ease_windows(rails: &mut Rails, by: Length, height: Length, next_row: Option<Length>) -> bool {
    let before = rails.clamps.clone();
    let least = rails.least_distance;
    let wide: Vec<ClampWindow> = before
        .iter()
        .map(|window| ClampWindow {
            from: (window.from - by).max(Length::ZERO),
            to: longer(window.to, by).min(height),
        })
        .collect();
    // Where two would come too near to each other, both stay as they are at that end.
    let mut windows = wide.clone();
    for i in 1..wide.len() {
        if wide[i].from - wide[i - 1].to < least {
            windows[i].from = before[i].from;
            windows[i - 1].to = before[i - 1].to;
        }
    }
    if let (Some(gap), Some(first), Some(last)) = (next_row, wide.first(), wide.last())
        && first.from + (height - last.to) + gap < least
        && let [.., own_last] = &before[..]
    {
        windows[0].from = before[0].from;
        let end = windows.len() - 1;
        windows[end].to = own_last.to;
    }
    rails.clamps = windows;
    rails.clamps != before
}

/// An array that may be moved further; `None` where it then could leave the slope or meet another.
fn wider(arrays: &[Array], place: usize, by: Length, outline: &crate::geometry::Polygon) -> Option<Array> {
    let mut array = arrays[place].clone();
    array.rails.as_ref()?;
    let shift = &mut array.shift;
    for side in [&mut shift.left, &mut shift.right, &mut shift.down, &mut shift.up] {
        *side = longer(*side, by);
    }
    let swept = array.swept();
    let mut others =
        arrays.iter().enumerate().filter(|(other, _)| *other != place).map(|(_, other)| other.swept());
    let fits = Containment::of(swept, outline) == Containment::On && !others.any(|other| other.meets(&swept));
    fits.then_some(array)
}

/// Longer by so much, but not beyond 10 km.
fn longer(length: Length, by: Length) -> Length {
    (length + by).min(Length::LIMIT)
}
