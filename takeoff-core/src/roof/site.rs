//! A slope made ready: what every stage of its takeoff looks things up in.
use super::{Field, SheetLaps, TileGrid};
use crate::geometry::{Point, Polygon};
use crate::model::{Assembly, Practice, Slope};

/// A slope with its tiled field, its tiles and its lap lines on the grid.
pub struct Site<'a> {
    /// The slope.
    pub slope: &'a Slope,
    /// How the crew works.
    pub practice: &'a Practice,
    /// The slope's outline with its holes.
    pub outline: Polygon,
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
            outline: outline_of(slope),
            field: Field::of(slope),
            grid: TileGrid::of(slope),
            laps: SheetLaps::of(slope),
        }
    }

    /// Whether a post may stand at a place: inside the outline, outside its holes, beyond the setbacks.
    pub fn allows_post_at(&self, at: Point, assembly: &Assembly) -> bool {
        self.outline.contains(at)
            && !self.outline.has_on_boundary(at)
            && self.slope.setbacks.iter().all(|setback| setback.broken_by(at, assembly).is_none())
    }
}

/// A slope's outline with its holes.
pub fn outline_of(slope: &Slope) -> Polygon {
    let rings = std::iter::once(&slope.outline).chain(&slope.holes);
    Polygon::new(rings.map(|ring| ring.iter().map(|&p| Point::from(p)).collect()).collect())
}
