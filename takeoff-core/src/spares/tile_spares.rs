//! Spare tiles by kind of piece, over all slopes that use the tile.
use std::sync::Arc;

use schemars::JsonSchema;
use serde::Serialize;

use super::tile_least_cost::{least_cost, no_least_cost};
use super::{Demand, Handled, LeastCost, Spares, pooled};
use crate::deck::{TileClass, count};
use crate::materials::Piece;
use crate::model::{Code, Job, Pieces, Problem, Problems, Stock, Tile};
use crate::probability::CountError;
use crate::roof::Part;
use crate::slope_takeoff::Worked;

/// The spares of every kind of piece that some slope uses, in the order of the job's tiles, and findings on them.
///
/// Tiles walked on are given by the slope; of a two-piece tile they are its covers, which lie on top.
pub(crate) fn tile_spares(job: &Job, worked: &[Worked]) -> Result<(Vec<TileSpares>, Vec<Problem>), Problems> {
    let mut all = Vec::new();
    let mut findings = Vec::new();
    for (tile, part, stock) in job.tiles.iter().flat_map(parts) {
        let mut handled = Handled::default();
        let mut salvageable = 0;
        let mut is_used = false;
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
            let under_arrays = worked.hidden.iter().filter(|(of, _)| *of == part);
            salvageable += under_arrays.map(|(_, count)| count).sum::<u64>();
            is_used = true;
        }
        if !is_used {
            continue;
        }
        let piece = Piece::new(&tile.name, part);
        findings.extend(harvest_beyond_arrays(&piece, stock, salvageable));
        let demand = Demand {
            handled,
            breakage: job.practice.breakage,
            pieces_for_severed: job.practice.pieces_for_severed,
            on_hand: stock.on_hand,
            harvested: stock.harvest.min(salvageable),
        };
        let spares = pooled(&[demand], job.practice.service_level)
            .map_err(|error| Problems::from(uncountable(&piece, error)))?;
        let least_cost = least_cost(job, &piece, &spares);
        if least_cost.is_none() {
            findings.extend(no_least_cost(job, &piece));
        }
        let weight_g = tile.weight_g;
        all.push(TileSpares { tile: piece, handled, salvageable, weight_g, spares, least_cost });
    }
    Ok((all, findings))
}

/// The parts of a tile, each with the pieces of it that need not be bought.
fn parts(tile: &Arc<Tile>) -> Vec<(&Arc<Tile>, Part, &Stock)> {
    match &tile.pieces {
        Pieces::One { stock, .. } => vec![(tile, Part::Tile, stock)],
        Pieces::PanAndCover { pans, covers, .. } => {
            vec![(tile, Part::Pan, pans), (tile, Part::Cover, covers)]
        }
    }
}

fn harvest_beyond_arrays(piece: &Piece, stock: &Stock, salvageable: u64) -> Option<Problem> {
    (stock.harvest > salvageable).then(|| {
        let message = format!(
            "{} of `{piece}` are to be taken from under the arrays, which hide {salvageable} that are whole and stay as they \
             are",
            stock.harvest
        );
        let help = "only those are counted: look at the arrays, or buy the others";
        Problem::new(Code::HarvestBeyondArrays, message, help, &stock.harvest_path)
    })
}

/// An error: the spares of a kind of piece have no usable distribution.
fn uncountable(piece: &Piece, error: CountError) -> Problem {
    let (help, path) = match error {
        CountError::RecordTooShort => {
            ("give the stated chances more weight, or a lower service level", "/practice/crew_record")
        }
        _ => ("give lower chances of breaking", "/practice/breakage"),
    };
    let message = format!("the spares of `{piece}` can't be counted: {error}");
    Problem::new(Code::BreakageTooWide, message, help, path)
}

/// Spares of one kind of piece.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TileSpares {
    /// The tile, with `, pan` or `, cover` for a two-piece tile.
    pub tile: Piece,
    /// How many tiles are handled, by class.
    pub handled: Handled,
    /// Whole tiles that the arrays hide and that nothing else is done to: they can be harvested.
    #[serde(rename = "hidden")]
    pub salvageable: u64,
    /// What one tile weighs, grams, if the job says.
    pub weight_g: Option<f64>,
    /// The count and how it was found.
    #[serde(flatten)]
    pub spares: Spares,
    /// The count at the least expected cost; `None` where the job does not say what a tile short costs, or a tile.
    pub least_cost: Option<LeastCost>,
}
