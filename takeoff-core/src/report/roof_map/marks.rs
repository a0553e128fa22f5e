//! Marks: letter, hatch and colour for each kind of work on a tile, and line widths.
//!
//! The three say the same, so that a drawing can be read in grey, without colours or without a legend at
//! hand. Tints get darker from loosened to severed, by which they differ for every kind of sight.
use super::super::markup::Markup;
use super::super::svg::Pen;
use super::paper::Paper;
use crate::cuts::CutKind;
use crate::deck::TileClass;
use crate::report::document::{Cut, TileWork};

/// Lines and letters.
pub(super) const INK: &str = "#1d2733";
/// Nothing drawn.
pub(super) const PAPER: &str = "#ffffff";
/// The field of tile.
pub(super) const FIELD: &str = "#faf8f3";
/// Noses and joints.
pub(super) const GRID: &str = "#b4ac9e";
/// Rafters.
pub(super) const WOOD: &str = "#7d7264";
/// Lap lines and patches.
pub(super) const FELT: &str = "#00687d";
/// Modules, over everything.
pub(super) const MODULE: &str = "#5b5f97";
/// Bands of roof cement and mesh, a tone through which the tiles show.
pub(super) const CEMENT: &str = "#2b2320";
pub(super) const CEMENT_TONE: f64 = 0.3;
/// Letters of what is easy.
pub(super) const QUIET: &str = "#5a6258";
/// Dimensions.
pub(super) const DIMENSION: &str = "#55606c";

/// Stroke widths on paper, mm.
pub(super) const HAIR: f64 = 0.1;
/// A line one looks at.
pub(super) const THIN: f64 = 0.2;
/// A line one sees first.
pub(super) const THICK: f64 = 0.4;

/// Letter sizes on paper, mm.
pub(super) const SMALL: f64 = 2.1;
/// Legend.
pub(super) const PLAIN: f64 = 2.5;

/// Mark of a tile.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Mark {
    /// Nothing but loosened.
    Loosened,
    /// Taken up and laid back.
    TakenUp,
    /// Cut with a hole.
    Hole,
    /// Cut with a notch.
    Notch,
    /// Cut with its corner away.
    Corner,
    /// Severed.
    Severed,
    /// Would have to be loosened and can't be.
    Excluded,
}

/// In the order of drawing and of the legend.
pub(super) const MARKS: [Mark; 7] =
    [Mark::Loosened, Mark::TakenUp, Mark::Hole, Mark::Notch, Mark::Corner, Mark::Severed, Mark::Excluded];

/// The look of a mark.
pub(super) struct Look {
    /// On the tile and in the legend.
    pub(super) letter: &'static str,
    /// In the legend.
    pub(super) words: &'static str,
    /// Of its hatch, in ids.
    pub(super) id: &'static str,
    tint: &'static str,
    line: &'static str,
    /// Distance of the hatch's lines on paper, mm.
    step: f64,
    /// Stroke of the hatch's lines on paper, mm.
    stroke: f64,
}

impl Mark {
    /// The mark of a handled tile; `cut` is its cut, if it is cut.
    pub(super) fn from_work(tile: &TileWork, cut: Option<&Cut>) -> Mark {
        match (tile.class, cut.map(|cut| cut.kind)) {
            _ if tile.excluded => Mark::Excluded,
            (TileClass::Severed, _) | (_, Some(CutKind::Severed)) => Mark::Severed,
            (_, Some(CutKind::Hole)) => Mark::Hole,
            (_, Some(CutKind::Notch)) => Mark::Notch,
            (_, Some(CutKind::Corner)) => Mark::Corner,
            (TileClass::Cut | TileClass::Removed, None) => Mark::TakenUp,
            (TileClass::Loosened, None) => Mark::Loosened,
        }
    }

    /// Its look.
    pub(super) fn look(self) -> Look {
        let look = |letter, words, id, tint, line, step, stroke| Look {
            letter,
            words,
            id,
            tint,
            line,
            step,
            stroke,
        };
        match self {
            Mark::Loosened => look("L", "raised, not removed", "loosened", "#f0efe6", "#c3bfae", 2.4, 0.1),
            Mark::TakenUp => look("T", "removed and reset", "taken-up", "#dfe5da", "#8c9a86", 1.0, 0.12),
            Mark::Hole => look("H", "cut: hole", "hole", "#c4def0", "#1f6091", 1.0, 0.34),
            Mark::Notch => look("N", "cut: notch", "notch", "#f8d79b", "#8f5a00", 0.9, 0.16),
            Mark::Corner => look("C", "cut: corner notch", "corner", "#d9bfe6", "#5d2f79", 0.7, 0.16),
            Mark::Severed => look("S", "can't be cut: replace", "severed", "#ec9a84", "#7a1500", 0.9, 0.22),
            Mark::Excluded => look("X", "set: left in place", "excluded", "#ffffff", "#1d2733", 1.5, 0.12),
        }
    }

    /// Its hatch, in one cell of the pattern that repeats.
    fn hatch(self, step: f64) -> Pen {
        let half = step / 2.0;
        let pen = Pen::default();
        match self {
            Mark::Loosened => pen.to(half, 0.0).line(half, -half),
            Mark::TakenUp => pen.to(0.0, -half).line(step, -half),
            // Dots, by the round ends of a line that goes nowhere.
            Mark::Hole => pen.to(half, -half).line(half, -half),
            Mark::Notch => rising(pen, step),
            Mark::Corner => falling(pen, step),
            Mark::Severed => falling(rising(pen, step), step),
            Mark::Excluded => pen.to(half, 0.0).line(half, -step).to(0.0, -half).line(step, -half),
        }
    }
}

/// Slanted lines that join at the edges of the cell.
fn rising(pen: Pen, step: f64) -> Pen {
    let half = step / 2.0;
    pen.to(-half, -half)
        .line(half, half)
        .to(0.0, -step)
        .line(step, 0.0)
        .to(half, -step - half)
        .line(step + half, -half)
}

fn falling(pen: Pen, step: f64) -> Pen {
    let half = step / 2.0;
    pen.to(-half, -half)
        .line(half, -step - half)
        .to(0.0, 0.0)
        .line(step, -step)
        .to(half, half)
        .line(step + half, -half)
}

/// The name of a mark's hatch on this drawing.
pub(super) fn hatch_id(prefix: &str, mark: Mark) -> String {
    format!("{prefix}-{}", mark.look().id)
}

/// The hatches, for the tiles to be filled with.
pub(super) fn define(svg: &mut Markup, paper: Paper, prefix: &str) {
    for mark in MARKS {
        let look = mark.look();
        let step = paper.mm(look.step);
        svg.tag("pattern")
            .with("id", hatch_id(prefix, mark))
            .with("patternUnits", "userSpaceOnUse")
            .with("width", step)
            .with("height", step)
            .open();
        svg.tag("rect").with("width", step).with("height", step).with("fill", look.tint).empty();
        svg.tag("path")
            .with("d", mark.hatch(step).way())
            .with("stroke", look.line)
            .with("stroke-width", paper.mm(look.stroke))
            .with("stroke-linecap", "round")
            .empty();
        svg.close("pattern");
    }
}
