//! Spare tiles to bring.
use super::{Basis, MaterialLine};
use crate::deck::TileClass;
use crate::materials::{Material, Piece};
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;

/// One line per kind of piece, also where none is needed: spares for breakage, new tiles for severed ones, less those
/// on hand and those taken from under the arrays.
pub(super) fn spare_tiles<'a>(
    job: &'a Job,
    slopes: &'a [SlopeTakeoff],
    spares: &'a [TileSpares],
) -> impl Iterator<Item = MaterialLine> + 'a {
    spares.iter().map(|of_piece| {
        let TileSpares { tile, handled, spares, .. } = of_piece;
        let breakage = Basis {
            what: format!(
                "breakage among {} cut, {} removed, {} raised and {} walked on: at most this many with probability {}",
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
            places: severed_tiles(job, slopes, tile),
        };
        let need = spares.used_at_level + spares.for_severed;
        let saved =
            |what: &str, count| Basis { what: what.to_owned(), count, each: -1.0, places: Vec::new() };
        let on_hand = saved("on hand already", spares.on_hand.min(need));
        let harvested = saved("salvaged from under the arrays", spares.harvested.min(need - on_hand.count));
        let reasons = [severed, on_hand, harvested].into_iter().filter(|basis| basis.count > 0);
        let basis = std::iter::once(breakage).chain(reasons).collect();
        let material = Material::SpareTile(tile.clone());
        let waste = material.waste(&job.practice);
        MaterialLine::new(material, waste, basis)
    })
}

/// Places where tiles of a kind of piece are severed.
fn severed_tiles(job: &Job, slopes: &[SlopeTakeoff], piece: &Piece) -> Vec<String> {
    let of_tile = job.slopes.iter().zip(slopes).filter(|(slope, _)| slope.tile.name == piece.tile);
    let tiles = of_tile.flat_map(|(_, takeoff)| takeoff.tiles.iter().map(move |tile| (takeoff, tile)));
    let severed = tiles.filter(|(_, tile)| tile.class == TileClass::Severed && tile.tile.part == piece.part);
    severed.map(|(takeoff, tile)| format!("{}/{}", takeoff.name, takeoff.tile_name(tile.which()))).collect()
}
