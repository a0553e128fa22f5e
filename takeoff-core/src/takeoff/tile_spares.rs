//! Spare tiles by kind of piece, over all slopes that use the tile.
use std::sync::Arc;

use crate::deck::count;
use crate::job::{Job, Pieces, Problem, Severity, Tile};
use crate::slope::{Part, piece_name};
use crate::spares::{CountError, Demand, Handled, pooled};

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
            let demand = Demand {
                handled,
                breakage: job.practice.breakage,
                pieces_for_severed: job.practice.pieces_for_severed,
                on_hand,
                harvested: 0,
            };
            match pooled(&[demand], job.practice.service_level) {
                Ok(spares) => all.push(TileSpares { tile: name, handled, weight_g: tile.weight_g, spares }),
                Err(error) => return Err(vec![uncountable(&name, error)]),
            }
        }
    }
    Ok(all)
}

/// The spares of a kind of piece that can't be counted.
fn uncountable(name: &str, error: CountError) -> Problem {
    let (help, path) = match error {
        CountError::RecordTooShort => {
            ("give the stated chances more weight, or a lower service level", "/practice/crew_record")
        }
        _ => ("give lower chances of breaking", "/practice/breakage"),
    };
    Problem {
        code: "breakage-too-wide".to_owned(),
        message: format!("the spares of `{name}` can't be counted: {error}"),
        help: help.to_owned(),
        path: path.to_owned(),
        severity: Severity::Error,
    }
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
