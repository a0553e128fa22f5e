//! The work on the deck and on the tile round a post.
//!
//! # What happens to tiles set in mortar, foam or adhesive?
//!
//! A set tile that would have to be raised stays: it is listed, but counts as no tile handled and takes no spare.
//!
//! # Which patches are linked?
//!
//! Those on one lap line. A patch that runs to the roof edge shares no lap line, so it is linked to none.
//!
//! # What does three-course work leave to the roof?
//!
//! No lap line governs it, so none bounds its margin. Bands are counted post by post, whole past the roof edge and past a
//! cone in them. Bands that meet a patch, another post's flange or its bands are a finding: the order in which they are laid
//! is settled on the roof. Mesh wider than the flange is an error, since its bands would lie on each other.
//!
//! # Which tiles can be salvaged from under an array?
//!
//! Whole tiles whose visible face one array's rectangle covers and to which nothing else is done; set tiles never. Only sound
//! tiles count: one that breaks on the way up is left out and the next one taken, so salvage uses no spare and is in no
//! class of breakage. Its labour is an action of its own. The crew chooses which.
mod battens;
mod chains;
mod codes;
mod flashings;
mod height;
mod hidden;
mod meeting;
mod method;
mod overlap;
mod patches;
mod perimeter;
mod support;
mod taken_up;
#[cfg(test)]
mod tests;
mod three_course;
mod top;
mod trim;
mod zone;

pub use battens::{BattenPiece, NAILS_A_PIECE, battens, battens_cut};
pub use codes::CODES;
pub use flashings::flashings_that_meet;
pub use height::{HeightStack, height_stack, too_low};
pub use hidden::hidden;
pub use meeting::each_meeting_pair;
pub use method::{DeckMethod, Method};
pub use patches::{Patch, PatchId, Patches, patches, patches_without_lap_line, pieces_of_sheet};
pub use perimeter::Perimeter;
pub use support::{Support, support, without_rafter};
pub use taken_up::{Taken, TileClass, TileWork, count, refastened, set_tiles, taken_up, tile_work};
pub use three_course::{ThreeCourse, bands, bands_mm2, bands_that_meet, cement_mm3, mesh_mm, three_course};
pub use top::{TopFlashingCheck, asked_tuck, head_lap};
pub use trim::{Trim, trim};
pub use zone::{DeckWork, deck_area, deck_work, flashing, own_patch, work_zone};
