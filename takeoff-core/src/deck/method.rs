//! How the deck flashing at a post is dried in: tucked under the sheet above, patched, or with three-course work.
use schemars::JsonSchema;
use serde::Serialize;

use crate::geometry::{Point, grid, half};
use crate::model::{Assembly, DriedIn, Practice};
use crate::roof::Site;

/// How a deck flashing is dried in, and the lap line that governs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// The sheet above is laid over the flange.
    Tucked {
        /// Its lower edge.
        line: i64,
        /// Whether that edge lies so low that it is cut around the cone as well.
        around_cone: bool,
    },
    /// A patch runs up under the next sheet.
    Patched {
        /// The lap line it goes under.
        line: i64,
    },
    /// A patch runs up to the field's edge, for there is no lap line above.
    PatchedToEdge {
        /// The first edge above.
        edge: i64,
    },
    /// Bands of cement and mesh go over the edges of the flange; the sheets stay as they are.
    ThreeCourse,
}

impl Method {
    /// The method at a place on a slope.
    ///
    /// # Rule
    ///
    /// The flashing spans `[v − down, v + up]`. It is *tucked* when a lap line lies in
    /// `[v − down + drain, v + up − tuck]`; the lowest such governs, and where it lies below `v + c` (`c` the
    /// cone's radius) the sheet is also cut around the cone. Otherwise, and always under sheets that are bonded
    /// or brittle, it is *patched* up to the lowest lap line above `v + up − tuck`. Only lap lines below the
    /// field's top at that `u` count; with none above, the patch runs to the first edge above. Where *three-course
    /// work* is asked for, that is the method wherever the post stands, and no lap line governs.
    ///
    /// # Example
    ///
    /// Down 4 in, up 7 in, drain 1 in, tuck 2 in: a lap line from 3 in below the post's point to 5 in above it
    /// tucks; cone radius 1 in: one less than 1 in above is cut around the cone too.
    pub fn at(site: &Site, assembly: &Assembly, at: Point) -> Method {
        let Some((low, high)) = Method::tuck_window(assembly, site.practice, at.v) else {
            return Method::ThreeCourse;
        };
        let top = site.field.top_at(at.u).unwrap_or(at.v);
        let line = |from: i64| site.laps.lowest_from(from).filter(|&line| line < top);
        if !site.slope.underlayment.never_tucked
            && let Some(line) = line(low).filter(|&line| line <= high)
        {
            let around_cone = line < at.v + half(assembly.deck_flashing.cone_diameter);
            return Method::Tucked { line, around_cone };
        }
        match line(high + 1) {
            Some(line) => Method::Patched { line },
            None => Method::PatchedToEdge { edge: site.field.edge_above(at) },
        }
    }

    /// From where to where a lap line tucks; `None` with three-course work, which asks for none.
    pub fn tuck_window(assembly: &Assembly, practice: &Practice, v: i64) -> Option<(i64, i64)> {
        let flashing = &assembly.deck_flashing;
        let low = v - grid(flashing.down) + grid(practice.drain);
        let high = v + grid(flashing.up) - grid(practice.deck_tuck);
        (flashing.dried_in == DriedIn::Underlayment).then_some((low, high))
    }

    /// Tucked, patched or three-course.
    pub fn kind(&self) -> DeckMethod {
        match self {
            Method::Tucked { .. } => DeckMethod::Tucked,
            Method::Patched { .. } | Method::PatchedToEdge { .. } => DeckMethod::Patched,
            Method::ThreeCourse => DeckMethod::ThreeCourse,
        }
    }

    /// The lap line that governs.
    pub fn line(&self) -> Option<i64> {
        match *self {
            Method::Tucked { line, .. } | Method::Patched { line } => Some(line),
            Method::PatchedToEdge { .. } | Method::ThreeCourse => None,
        }
    }
}

/// How the deck flashing is dried in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DeckMethod {
    /// The sheet above is laid over the flange.
    Tucked,
    /// A patch runs from the cone up under the next sheet.
    Patched,
    /// Roof cement, mesh and roof cement go over the edges of the flange.
    ThreeCourse,
}
