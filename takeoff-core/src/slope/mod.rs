//! One roof plane: the tiled field, the tiles on it, its place in the world.
mod array;
mod field;
mod frame;
mod naming;
mod noses;
mod rafters;
mod rails;
mod setback;
mod site;
mod tiles;

pub use array::{Array, Lies};
pub use field::Field;
pub use frame::{FitError, Frame, PlaneFit};
pub use naming::{piece_name, tile_name};
pub use noses::{MOST_COURSES, NosesError, noses_at, noses_between};
pub use rails::{ClampWindow, Rails, Shift, SpanZone};
pub use setback::{Breaks, Setback};
pub use site::{Site, outline_of};
pub use tiles::{Meeting, Part, TileGrid, TileId};
