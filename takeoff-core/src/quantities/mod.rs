//! Quantities: the bill of each piece of work and of a job, and the material list. Every need says where it comes from.
mod alike;
mod bill;
mod blades;
mod cement;
mod counts;
mod cutting;
mod felt;
mod items;
mod job_bill;
mod line;
mod materials;
mod packs;
mod roll_plan;
mod sealant;
mod spare_tiles;
#[cfg(test)]
mod tests;

pub use bill::{Bill, Need, bill_of_batten_piece, bill_of_blocking, bill_of_post};
pub use counts::{Counts, counts};
pub(crate) use cutting::cutting;
pub(crate) use felt::felt_rolls;
pub use items::conflicting_items;
pub use job_bill::{Entry, JobBill, Work, job_bill};
pub(crate) use line::to_bring;
pub use line::{Basis, MaterialLine};
pub use materials::{materials, unused_waste};
pub use packs::whole_packs;
pub(crate) use packs::{Pack, least_covering};
pub use roll_plan::{PatchPiece, RollPlan, patch_pieces, roll_plan};
pub use sealant::{bead_mm3, flange_bead_mm, ring_mm};
