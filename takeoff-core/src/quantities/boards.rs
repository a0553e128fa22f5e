//! Blocking boards.
use super::MaterialLine;
use super::needs::{Alike, Needs};
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::Unit;

/// The running length of all blocking boards: boards of one length together.
pub(super) fn boards(job: &Job, slopes: &[SlopeTakeoff]) -> Vec<MaterialLine> {
    let mut alike = Alike::new();
    for slope in slopes {
        for (post, length) in slope.boards() {
            alike.add(length, length, &slope.name, slope.post_name(post));
        }
    }
    let mut needs = Needs::new(Unit::Mm);
    for (length, places) in alike.groups() {
        let what = format!("between rafters {} apart in the clear", job.display.length(length));
        needs.add("blocking board", what, length.mm(), places);
    }
    needs.into_lines()
}
