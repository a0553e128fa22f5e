//! One roof plane: the tiled field, the tiles on it, its place in the world.
//!
//! # Where is `u = v = 0` of a surveyed slope?
//!
//! At the first surveyed point, moved onto the fitted plane along its normal.
mod field;
mod frame;
mod lap_lines;
mod naming;
mod noses;
mod site;
mod tiles;

pub use field::Field;
pub use frame::{FitError, Frame, PlaneFit};
pub use lap_lines::SheetLaps;
pub(crate) use naming::part_name;
pub use naming::{piece_name, tile_name};
pub use noses::{MOST_COURSES, NosesError, noses_at, noses_between};
pub use site::{Site, outline_of};
pub use tiles::{Meeting, Part, TileGrid, TileId, TilePiece};
