//! The work on the deck and on the tile round a post.
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
