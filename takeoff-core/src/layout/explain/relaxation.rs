//! Relaxed limits.
use crate::geometry::Polygon;
use crate::layout::result::Constraint;
use crate::model::{Array, ClampWindow, Containment, Job, Post, Rails};
use crate::roof::outline_of;
use crate::units::Length;

impl Constraint {
    /// All limits, in the order in which messages name them.
    pub(crate) const ALL: [Constraint; 11] = [
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

    /// Whether it is a length, which can be relaxed by an amount.
    pub(crate) fn is_length(self) -> bool {
        use Constraint::*;
        matches!(
            self,
            GreatestSpan | GreatestOverhang | ClampWindows | Shift | Setbacks | LeastDistance | LeastMargin
        )
    }

    /// The job with the limit relaxed by a length, or removed if it is no length; `None` if it is not in force or can't be
    /// relaxed.
    ///
    /// Spans and overhangs grow everywhere, zones included. Clamp windows grow at both ends, up to the edges of the module
    /// and the rails' least distance from each other. An array's shift grows on all four sides, provided that the array
    /// stays on the slope and clear of the others.
    pub(crate) fn relaxed(self, job: &Job, by: Length) -> Option<Job> {
        let mut relaxed = job.clone();
        let mut changed = false;
        if self == Constraint::LeastMargin {
            let margin = &mut relaxed.practice.least_margin;
            changed = *margin > Length::ZERO;
            *margin = (*margin - by).max(Length::ZERO);
        }
        for slope in &mut relaxed.slopes {
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
                    let outline = outline_of(slope);
                    for index in 0..slope.arrays.len() {
                        if let Some(wider) = with_wider_shift(&slope.arrays, index, by, &outline) {
                            slope.arrays[index] = wider;
                            changed = true;
                        }
                    }
                }
                _ => {
                    for array in &mut slope.arrays {
                        let height = array.module_height;
                        let next_row = (array.rows > 1).then_some(array.row_gap);
                        if let Some(rails) = &mut array.rails {
                            changed |= self.relax_rails(rails, by, height, next_row);
                        }
                    }
                }
            }
        }
        changed.then_some(relaxed)
    }

    /// The job without the limit; `None` if it is not in force.
    pub(crate) fn removed(self, job: &Job) -> Option<Job> {
        let by = match self {
            // No length is the limit of a shift: the array has to stay on the slope. The widest of these that fits counts
            // as no limit.
            Constraint::Shift => {
                [24, 12, 6, 3, 1].map(|inches| Length::from_nm(inches * Length::INCH.nm())).into()
            }
            _ => vec![Length::LIMIT],
        };
        by.into_iter().find_map(|by| self.relaxed(job, by))
    }

    fn relax_rails(self, rails: &mut Rails, by: Length, height: Length, next_row: Option<Length>) -> bool {
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
            Constraint::ClampWindows => widen_windows(rails, by, height, next_row),
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

/// Wider clamp windows, as far as the module and the least distance between rails allow; whether they changed.
fn widen_windows(rails: &mut Rails, by: Length, height: Length, next_row: Option<Length>) -> bool {
    let before = rails.clamps.clone();
    let least = rails.least_distance;
    let wide: Vec<ClampWindow> = before
        .iter()
        .map(|window| ClampWindow {
            from: (window.from - by).max(Length::ZERO),
            to: longer(window.to, by).min(height),
        })
        .collect();
    // Two windows that would come too near to each other keep those ends.
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

/// The array with a wider shift; `None` if it could then leave the slope or meet another array.
fn with_wider_shift(arrays: &[Array], index: usize, by: Length, outline: &Polygon) -> Option<Array> {
    let mut array = arrays[index].clone();
    array.rails.as_ref()?;
    let shift = &mut array.shift;
    for side in [&mut shift.left, &mut shift.right, &mut shift.down, &mut shift.up] {
        *side = longer(*side, by);
    }
    let swept = array.swept();
    let others = arrays.iter().enumerate().filter(|(other, _)| *other != index);
    let is_clear = !others.map(|(_, other)| other.swept()).any(|other| other.meets(&swept));
    (is_clear && Containment::new(swept, outline) == Containment::On).then_some(array)
}

/// A length plus another one, 10 km at most.
fn longer(length: Length, by: Length) -> Length {
    (length + by).min(Length::LIMIT)
}
