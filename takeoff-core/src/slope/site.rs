//! A slope made ready: what every stage of its takeoff looks things up in.
use crate::deck::SheetLaps;
use crate::job::{Practice, Slope};

use super::{Field, TileGrid};

/// A slope with its tiled field, its tiles and its lap lines on the grid.
pub struct Site<'a> {
    /// The slope.
    pub slope: &'a Slope,
    /// How the crew works.
    pub practice: &'a Practice,
    /// What is tiled.
    pub field: Field,
    /// Which tile lies where.
    pub grid: TileGrid,
    /// Where the sheets lap.
    pub laps: SheetLaps,
}

impl<'a> Site<'a> {
    /// Makes a slope ready.
    pub fn of(slope: &'a Slope, practice: &'a Practice) -> Site<'a> {
        Site {
            slope,
            practice,
            field: Field::of(slope),
            grid: TileGrid::of(slope),
            laps: SheetLaps::of(slope),
        }
    }
}
