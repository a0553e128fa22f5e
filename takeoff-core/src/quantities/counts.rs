//! Totals over all slopes.
use crate::cuts::CutKind;
use crate::deck::{DeckMethod, TileClass};
use crate::relocation::Situation;
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;
use crate::units::RealLength;

/// Totals over all slopes.
pub fn counts(slopes: &[SlopeTakeoff], spares: &[TileSpares]) -> Counts {
    let posts = || slopes.iter().flat_map(|slope| &slope.posts);
    let cuts = || slopes.iter().flat_map(|slope| &slope.cuts);
    let of_kind = |kind: CutKind| cuts().filter(|cut| cut.judged.kind() == kind).count() as u64;
    let by_method =
        |method: DeckMethod| posts().filter(|post| post.deck.method.kind() == method).count() as u64;
    let tiles = || slopes.iter().flat_map(|slope| &slope.tiles).filter(|tile| !tile.excluded);
    let loosened = tiles().filter(|tile| tile.class == TileClass::Loosened).count() as u64;
    Counts {
        posts: posts().count() as u64,
        holes: of_kind(CutKind::Hole),
        notches: of_kind(CutKind::Notch),
        corners: of_kind(CutKind::Corner),
        severed: of_kind(CutKind::Severed),
        posts_on_several_tiles: posts().filter(|post| post.situation > Situation::OneTileEdge).count() as u64,
        tucked: by_method(DeckMethod::Tucked),
        patched: by_method(DeckMethod::Patched),
        three_course: by_method(DeckMethod::ThreeCourse),
        patches: slopes.iter().map(|slope| slope.patches.len() as u64).sum(),
        removed: tiles().count() as u64 - loosened,
        loosened,
        harvested: spares.iter().map(|of| of.spares.harvested).sum(),
        blade_path: cuts().map(|cut| cut.blade_path).sum(),
    }
}

/// Totals over all slopes.
#[derive(Clone, Debug, Default)]
pub struct Counts {
    /// Posts.
    pub posts: u64,
    /// Tiles with a hole (an edge tile's piece counts as a tile).
    pub holes: u64,
    /// Tiles with a notch.
    pub notches: u64,
    /// Tiles with a corner cut away.
    pub corners: u64,
    /// Tiles severed.
    pub severed: u64,
    /// Posts that cut more than one tile.
    pub posts_on_several_tiles: u64,
    /// Posts whose flashing tucks under the sheet above.
    pub tucked: u64,
    /// Posts whose flashing is patched.
    pub patched: u64,
    /// Patches, linked ones counted once.
    pub patches: u64,
    /// Posts whose flashing is dried in with three-course work.
    pub three_course: u64,
    /// Tiles taken up (cut ones with them).
    pub removed: u64,
    /// Tiles loosened only.
    pub loosened: u64,
    /// Sound tiles taken from under the arrays, to be spares.
    pub harvested: u64,
    /// Blade path, in tile.
    pub blade_path: RealLength,
}
