//! One roof plane: the tiled field, the tiles on it, its place in the world.
mod field;
mod tiles;

pub use field::Field;
pub use tiles::{Part, TileGrid, TileId};
