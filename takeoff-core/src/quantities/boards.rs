//! Blocking boards.
use super::MaterialLine;
use super::needs::{Alike, Needs};
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::{Length, Unit};

/// The running length of all blocking boards: boards of one length together.
pub(super) fn boards(job: &Job, slopes: &[SlopeTakeoff]) -> Vec<MaterialLine> {
    let mut alike = Alike::new();
    for slope in slopes {
        for board in &slope.blocking {
            alike.add(board.length_mm.to_bits(), board.length_mm, &slope.name, &board.post);
        }
    }
    let mut needs = Needs::new(Unit::Mm);
    for (length_mm, places) in alike.groups() {
        let clear = Length::nearest(length_mm * 1e6).unwrap_or(Length::LIMIT);
        let what = format!("between rafters {} apart in the clear", job.display.length(clear));
        needs.add("blocking board", what, length_mm, places);
    }
    needs.into_lines()
}
