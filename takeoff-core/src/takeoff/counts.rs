//! The totals in one glance.
use super::{Counts, CutKind, DeckMethod, Situation, SlopeTakeoff, TileClass, TileSpares};

/// Totals over all slopes.
pub(super) fn counts(slopes: &[SlopeTakeoff], spares: &[TileSpares]) -> Counts {
    let posts = || slopes.iter().flat_map(|slope| &slope.posts);
    let cuts = || slopes.iter().flat_map(|slope| &slope.cuts);
    let of_kind = |kind: CutKind| cuts().filter(|cut| cut.kind == kind).count() as u64;
    let by_method = |method: DeckMethod| posts().filter(|post| post.deck.method == method).count() as u64;
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
        blade_path_mm: cuts().map(|cut| cut.blade_path_mm).sum(),
    }
}
