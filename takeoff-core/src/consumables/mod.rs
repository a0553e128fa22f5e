//! What the work uses up: felt, cement and mesh, sealant, fasteners, boards, tiles. Every need says where it comes from.
mod blades;
mod boards;
mod cement;
mod fasteners;
mod felt;
mod materials;
mod needs;
mod packs;
mod sealant;
mod spare_tiles;
#[cfg(test)]
mod tests;
mod waste;

pub(crate) use blades::BLADE;
pub(crate) use felt::felt_rolls;
pub use materials::materials;
pub(crate) use packs::least_covering;
pub use packs::whole_packs;
pub use sealant::{Dose, bead_mm3, doses, flange_bead_mm, ring_mm};
pub use waste::unused_waste;
