//! Spare tiles to bring, and why so many.
use super::needs::line;
use super::{Basis, MaterialLine};
use crate::deck::TileClass;
use crate::model::Job;
use crate::roof::piece_name;
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;
use crate::units::Unit;

/// A line a kind of piece, also where none is needed: spares for breakage, new tiles for severed ones, less what
/// is on hand.
pub(super) fn spare_tiles(job: &Job, slopes: &[SlopeTakeoff], spares: &[TileSpares]) -> Vec<MaterialLine> {
    spares
        .iter()
        .map(|of_kind| {
            let TileSpares { tile, handled, spares, .. } = of_kind;
            let breakage = Basis {
                what: format!(
                    "breakage among {} cut, {} taken up, {} loosened and {} walked on: not more with probability {}",
                    handled.cut, handled.removed, handled.loosened, handled.walked, job.practice.service_level
                ),
                count: spares.used_at_level,
                each: 1.0,
                places: Vec::new(),
            };
            let severed = Basis {
                what: "new tiles that make up a severed one".to_owned(),
                count: handled.severed,
                each: job.practice.pieces_for_severed as f64,
                places: severed_tiles(slopes, tile),
            };
            let need = spares.used_at_level + spares.for_severed;
            let saved = |what: &str, count| Basis {
                what: what.to_owned(),
                count,
                each: -1.0,
                places: Vec::new(),
            };
            let on_hand = saved("on hand already", spares.on_hand.min(need));
            let harvested =
                saved("taken from under the arrays", spares.harvested.min(need - on_hand.count));
            let reasons = [severed, on_hand, harvested].into_iter().filter(|basis| basis.count > 0);
            let basis = std::iter::once(breakage).chain(reasons).collect();
            line(of_kind.item(), Unit::Each, 0.0, basis)
        })
        .collect()
}

/// Where tiles of a kind are severed.
fn severed_tiles(slopes: &[SlopeTakeoff], piece: &str) -> Vec<String> {
    let tiles = slopes.iter().flat_map(|slope| slope.tiles.iter().map(move |tile| (slope, tile)));
    let severed = tiles.filter(|(_, tile)| tile.class == TileClass::Severed);
    let of_kind = severed.filter(|(slope, tile)| piece_name(&slope.tile, tile.tile.part) == piece);
    of_kind.map(|(slope, tile)| format!("{}/{}", slope.name, slope.tile_name(tile.which()))).collect()
}

impl TileSpares {
    /// What the material list calls it.
    pub(crate) fn item(&self) -> String {
        format!("spare tile {}", self.tile)
    }
}
