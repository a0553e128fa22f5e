//! Spare tiles by kind of piece, over all slopes that use the tile.
use std::sync::Arc;

use crate::deck::count;
use crate::job::{Job, Pieces, Problem, Severity, Tile};
use crate::slope::{Part, piece_name};
use crate::spares::{Handled, Terms, spares};

use super::slope::Worked;
use super::{TileClass, TileSpares};

/// The spares of every kind of piece that some slope uses, in the order of the job's tiles.
///
/// Tiles walked on are given by the slope; of a two-piece tile they are its covers, which lie on top.
pub(super) fn tile_spares(job: &Job, worked: &[Worked]) -> Result<Vec<TileSpares>, Vec<Problem>> {
    let mut all = Vec::new();
    for tile in &job.tiles {
        for (part, on_hand) in parts(tile) {
            let mut handled = Handled::default();
            let mut name = None;
            for (slope, worked) in job.slopes.iter().zip(worked) {
                if !Arc::ptr_eq(&slope.tile, tile) {
                    continue;
                }
                let of = |class| count(&worked.taken, part, class);
                handled.severed += of(TileClass::Severed);
                handled.cut += of(TileClass::Cut);
                handled.removed += of(TileClass::Removed);
                handled.loosened += of(TileClass::Loosened);
                handled.walked += if part == Part::Pan { 0 } else { slope.walked };
                name = Some(piece_name(slope, part));
            }
            let Some(name) = name else { continue };
            let terms = Terms {
                service_level: job.practice.service_level,
                pieces_for_severed: job.practice.pieces_for_severed,
                on_hand,
            };
            match spares(&handled, &job.practice.breakage, &terms) {
                Ok(spares) => all.push(TileSpares { tile: name, handled, weight_g: tile.weight_g, spares }),
                Err(error) => {
                    return Err(vec![Problem {
                        code: "breakage-too-wide".to_owned(),
                        message: format!("the spares of `{name}` can't be counted: {error}"),
                        help: "give lower chances of breaking".to_owned(),
                        path: "/practice/breakage".to_owned(),
                        severity: Severity::Error,
                    }]);
                }
            }
        }
    }
    Ok(all)
}

/// The parts of a tile with the pieces on hand.
fn parts(tile: &Tile) -> Vec<(Part, u64)> {
    match tile.pieces {
        Pieces::One { on_hand, .. } => vec![(Part::Tile, on_hand)],
        Pieces::PanAndCover { pans_on_hand, covers_on_hand, .. } => {
            vec![(Part::Pan, pans_on_hand), (Part::Cover, covers_on_hand)]
        }
    }
}
