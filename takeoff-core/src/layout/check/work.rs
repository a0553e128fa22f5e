//! What a post does to the roof where it stands.
use super::codes::{FAILING, NO_TILE, SEVERED, THIN};
use super::laid::Laid;
use crate::model::{Code, Post, Practice, Problem};
use crate::relocation::Situation;
use crate::slope_takeoff::PostTakeoff;
use crate::units::Length;

impl Laid<'_> {
    /// A post has tile over it; and findings where it severs one, fails a check, or stands too near to where the work
    /// changes.
    pub(super) fn work(&self, practice: &Practice, post: &Post, row: &PostTakeoff) -> Vec<Problem> {
        let name = &post.name;
        if row.situation == Situation::None {
            return vec![self.error(NO_TILE, format!("`{name}` meets no tile"), "move it under tile")];
        }
        let mut found = Vec::new();
        let mut add = |code: Code, what: String, help: &str| found.push(self.finding(code, what, help));
        if row.severed {
            add(SEVERED, format!("`{name}` severs a tile"), "make the piece up from new tiles");
        }
        let show = |mm: f64| self.show(Length::nearest(mm * 1e6).unwrap_or(Length::LIMIT));
        let (top, stack) = (&row.top, &row.height);
        let short = [("tucks", top.tuck_short_mm), ("covers each side", top.side_short_mm)];
        for (does, short_mm) in short.into_iter().filter(|(_, short_mm)| *short_mm > 0.0) {
            let what = format!("the tile flashing of `{name}` {does} {} less than asked", show(short_mm));
            add(FAILING, what, "take another tile flashing");
        }
        for (part, top_mm) in [("cone", stack.cone_mm), ("post", stack.post_mm)] {
            if let Some(below_mm) = top_mm.map(|top_mm| stack.tile_mm - top_mm).filter(|below| *below >= 0.0)
            {
                let what =
                    format!("the {part} of `{name}` ends {} below the top of the tile", show(below_mm));
                add(FAILING, what, "take a taller one");
            }
        }
        for (way, mm) in [("down", row.margin.down_mm), ("up", row.margin.up_mm)] {
            if mm < practice.least_margin.mm() {
                let least = self.show(practice.least_margin);
                add(
                    THIN,
                    format!("the work at `{name}` changes less than {least} {way} from it"),
                    "measure it twice",
                );
            }
        }
        found
    }
}
