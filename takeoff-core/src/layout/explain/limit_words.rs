//! Limits in words, for messages.
use crate::layout::result::Constraint;
use crate::model::Job;
use crate::units::Length;

impl Constraint {
    /// The limit with its length, for the first array with rails.
    pub(super) fn shown(self, job: &Job) -> String {
        let show = |length: Length| job.display.length(length);
        let arrays = job.slopes.iter().flat_map(|slope| &slope.arrays);
        let Some((array, rails)) = arrays.filter_map(|array| Some((array, array.rails.as_ref()?))).next()
        else {
            return String::new();
        };
        match self {
            Constraint::GreatestSpan => format!("the greatest span of {}", show(rails.greatest_span)),
            Constraint::GreatestOverhang => {
                format!("the greatest overhang of {}", show(rails.greatest_overhang))
            }
            Constraint::ClampWindows => "the clamp windows".to_owned(),
            Constraint::Shift => {
                let shift = &array.shift;
                let sides =
                    [(shift.left, "left"), (shift.right, "right"), (shift.down, "down"), (shift.up, "up")];
                let sides = sides.map(|(length, side)| format!("{} {side}", show(length)));
                format!("the array's shift of at most {}", sides.join(", "))
            }
            Constraint::Setbacks => "the setbacks".to_owned(),
            Constraint::LeastDistance => format!("the least distance of {}", show(rails.least_distance)),
            Constraint::LeastMargin => format!("the least margin of {}", show(job.practice.least_margin)),
            Constraint::Zones => "the zones of shorter spans".to_owned(),
            Constraint::Stagger => "posts staggered between the rails".to_owned(),
            Constraint::NoBlocking => "no blocking between the rafters".to_owned(),
            Constraint::FixedPosts => "the fixed posts".to_owned(),
        }
    }

    /// The relaxation of a length by `by`, as advice; `relaxed` is the job with it.
    pub(super) fn relaxation_in_words(self, relaxed: &Job, by: String) -> String {
        match self {
            Constraint::GreatestSpan
            | Constraint::GreatestOverhang
            | Constraint::LeastDistance
            | Constraint::LeastMargin => {
                let now = self.shown(relaxed);
                let (name, length) = now.rsplit_once(" of ").unwrap_or((&now, ""));
                format!("let {name} be {length}")
            }
            Constraint::ClampWindows => format!("widen the clamp windows by {by} at both ends"),
            Constraint::Shift => format!("let the array move {by} further each way"),
            _ => format!("shorten the setbacks by {by}"),
        }
    }

    /// The removal of a limit that is no length, as advice.
    pub(super) fn removal_in_words(self) -> &'static str {
        match self {
            Constraint::Zones => "let rails span as far in the zones as elsewhere",
            Constraint::Stagger => "don't stagger the posts",
            Constraint::NoBlocking => "allow blocking",
            _ => "free the fixed posts",
        }
    }
}
