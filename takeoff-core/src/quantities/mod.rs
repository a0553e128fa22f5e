//! What the work uses up: felt, cement and mesh, sealant, fasteners, boards, tiles. Every need says where it comes from.
mod blades;
mod boards;
mod cement;
mod counts;
mod cutting;
mod fasteners;
mod felt;
mod line;
mod materials;
mod needs;
mod packs;
mod roll_plan;
mod sealant;
mod spare_tiles;
#[cfg(test)]
mod tests;
mod waste;

pub(crate) use blades::BLADE;
pub use counts::{Counts, counts};
pub(crate) use cutting::cutting;
pub(crate) use felt::felt_rolls;
pub use line::{Basis, MaterialLine};
pub use materials::materials;
pub(crate) use packs::least_covering;
pub use packs::whole_packs;
pub use roll_plan::{PatchPiece, RollPlan, patch_pieces, roll_plan};
pub use sealant::{Dose, bead_mm3, doses, flange_bead_mm, ring_mm};
pub use waste::unused_waste;
