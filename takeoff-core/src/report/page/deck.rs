//! The work on the deck: patches, battens, blocking, trim.
use super::super::quantity::Quantities;
use super::super::words;
use super::grid::Grid;
use super::section::Section;
use crate::report::document::{Patch, SlopeTakeoff, Takeoff};

/// Tables a slope of what is done to the deck.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    let bare = |slope: &SlopeTakeoff| {
        slope.patches.is_empty()
            && slope.three_course.is_empty()
            && slope.battens.is_empty()
            && slope.blocking.is_empty()
            && slope.trim.is_empty()
    };
    if takeoff.slopes.iter().all(bare) {
        return None;
    }
    let shown = Quantities(takeoff.display);
    Some(Section::new("deck", "Patches and wood", |html| {
        for slope in &takeoff.slopes {
            Grid::new(format!("Felt patches of {}", slope.name), &slope.patches)
                .name("patch", |patch| patch.name.clone())
                .names("over posts", |patch| &patch.posts)
                .number("width × height", |patch| size(patch, shown))
                .number(
                    "pieces",
                    |patch| if patch.pieces > 1 { patch.pieces.to_string() } else { String::new() },
                )
                .number("felt", |patch| shown.area(patch.area_mm2))
                .number("staples", |patch| patch.staples.to_string())
                .names("half-round at", |patch| &patch.half_round_at)
                .names("round hole at", |patch| &patch.round_at)
                .names("cut round", |patch| &patch.cut_round)
                .names("lies over", |patch| &patch.lies_over)
                .words("goes under", |patch| {
                    patch.lap_line_mm.map_or("no sheet: to the roof edge".to_owned(), |line| {
                        format!("the lap line at {}", shown.length(line))
                    })
                })
                .write(html);
            Grid::new(format!("Three-course work of {}", slope.name), &slope.three_course)
                .name("post", |work| work.post.clone())
                .number("covered", |work| shown.area(work.area_mm2))
                .number("mesh", |work| shown.length(work.mesh_mm))
                .number("roof cement", |work| shown.volume(work.cement_mm3))
                .write(html);
            Grid::new(format!("Battens of {} cut and reset", slope.name), &slope.battens)
                .name("course", |batten| batten.course.to_string())
                .number("from", |batten| shown.length(batten.from_mm))
                .number("to", |batten| shown.length(batten.to_mm))
                .number("length", |batten| shown.length(batten.to_mm - batten.from_mm))
                .number("nails", |batten| batten.nails.to_string())
                .names("for posts", |batten| &batten.posts)
                .write(html);
            Grid::new(format!("Blocking of {}", slope.name), &slope.blocking)
                .name("post", |board| board.post.clone())
                .number("length", |board| shown.length(board.length_mm))
                .write(html);
            Grid::new(format!("Ridge, hip and rake tile of {} removed", slope.name), &slope.trim)
                .name("edge", |trim| words::edge(trim.edge).to_owned())
                .number("length", |trim| shown.length(trim.length_mm))
                .write(html);
        }
    }))
}

fn size(patch: &Patch, shown: Quantities) -> String {
    let [left, lower, right, upper] = patch.bounds_mm;
    format!("{} × {}", shown.short_length(right - left), shown.short_length(upper - lower))
}
