//! The work of a post on the roof, from the takeoff of the laid-out job.
use super::array::LaidArray;
use super::codes::{FAILING, NO_TILE, SEVERED, THIN};
use crate::model::Code;
use crate::model::{Post, Practice, Problem};
use crate::relocation::Situation;
use crate::slope_takeoff::PostTakeoff;
use crate::units::Length;

impl LaidArray<'_> {
    /// A post has tile over it. Findings where it severs a tile, fails a check, or is nearer than the least margin to a
    /// change of its work.
    pub(super) fn roof_work(&self, practice: &Practice, post: &Post, row: &PostTakeoff) -> Vec<Problem> {
        let name = &post.name;
        if row.situation == Situation::None {
            return vec![self.problem(NO_TILE, format!("`{name}` meets no tile"), "move it under tile")];
        }
        let mut found = Vec::new();
        let mut add = |code: Code, what: String, help: &str| found.push(self.problem(code, what, help));
        if row.severed {
            add(SEVERED, format!("`{name}` severs a tile"), "make the piece up from new tiles");
        }
        let (top, stack) = (&row.top, &row.height);
        let short = [("tucks", top.tuck_short), ("covers each side", top.side_short)];
        for (does, steps) in short.into_iter().filter(|(_, steps)| *steps > 0) {
            // A half of a nanometre shows as a whole one.
            let short = self.show(Length::from_nm((steps + 1) / 2));
            let what = format!("the tile flashing of `{name}` {does} {short} less than asked");
            add(FAILING, what, "take another tile flashing");
        }
        for (part, top) in [("cone", stack.cone), ("post", stack.post)] {
            if let Some(below) = top.map(|top| stack.tile - top).filter(|below| *below >= Length::ZERO) {
                let below = self.show(below);
                let what = format!("the {part} of `{name}` ends {below} below the top of the tile");
                add(FAILING, what, "take a taller one");
            }
        }
        for (side, margin) in [("down", row.margin.down), ("up", row.margin.up)] {
            if margin < practice.least_margin {
                let least = self.show(practice.least_margin);
                let what = format!("the work at `{name}` changes less than {least} {side} from it");
                add(THIN, what, "measure it twice");
            }
        }
        found
    }
}
