//! Spare tiles by kind of piece, over all slopes that use the tile.
use std::sync::Arc;

use schemars::JsonSchema;
use serde::Serialize;

use super::tile_least_cost::{least_cost, without_price};
use super::{Demand, Handled, LeastCost, Spares, pooled};
use crate::deck::{TileClass, count};
use crate::model::{Code, Job, Pieces, Problem, Problems, Stock, Tile};
use crate::probability::CountError;
use crate::roof::{Part, piece_name};
use crate::slope_takeoff::Worked;

/// The spares of every kind of piece that some slope uses, in the order of the job's tiles, and what is odd about
/// them.
///
/// Tiles walked on are given by the slope; of a two-piece tile they are its covers, which lie on top.
pub(crate) fn tile_spares(job: &Job, worked: &[Worked]) -> Result<(Vec<TileSpares>, Vec<Problem>), Problems> {
    let mut all = Vec::new();
    let mut findings = Vec::new();
    for (tile, part, stock) in job.tiles.iter().flat_map(parts) {
        let mut handled = Handled::default();
        let mut hidden = 0;
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
            hidden += worked.hidden.iter().filter(|(of, _)| *of == part).map(|(_, count)| count).sum::<u64>();
            name = Some(piece_name(slope, part));
        }
        let Some(name) = name else { continue };
        findings.extend(harvest_beyond_arrays(&name, stock, hidden));
        let demand = Demand {
            handled,
            breakage: job.practice.breakage,
            pieces_for_severed: job.practice.pieces_for_severed,
            on_hand: stock.on_hand,
            harvested: stock.harvest.min(hidden),
        };
        let spares = pooled(&[demand], job.practice.service_level)
            .map_err(|error| Problems::from(uncountable(&name, error)))?;
        let mut of_kind =
            TileSpares { tile: name, handled, hidden, weight_g: tile.weight_g, spares, least_cost: None };
        of_kind.least_cost = least_cost(job, &of_kind);
        findings.extend(without_price(job, &of_kind));
        all.push(of_kind);
    }
    Ok((all, findings))
}

/// The parts of a tile with what need not be bought of them.
fn parts(tile: &Arc<Tile>) -> Vec<(&Arc<Tile>, Part, &Stock)> {
    match &tile.pieces {
        Pieces::One { stock, .. } => vec![(tile, Part::Tile, stock)],
        Pieces::PanAndCover { pans, covers, .. } => {
            vec![(tile, Part::Pan, pans), (tile, Part::Cover, covers)]
        }
    }
}

fn harvest_beyond_arrays(name: &str, stock: &Stock, hidden: u64) -> Option<Problem> {
    (stock.harvest > hidden).then(|| {
        let message = format!(
            "{} of `{name}` are to be taken from under the arrays, which hide {hidden} that are whole and stay as they \
             are",
            stock.harvest
        );
        let help = "only those are counted: look at the arrays, or buy the others";
        Problem::new(Code::HarvestBeyondArrays, message, help, &stock.harvest_path)
    })
}

/// The spares of a kind of piece that can't be counted.
fn uncountable(name: &str, error: CountError) -> Problem {
    let (help, path) = match error {
        CountError::RecordTooShort => {
            ("give the stated chances more weight, or a lower service level", "/practice/crew_record")
        }
        _ => ("give lower chances of breaking", "/practice/breakage"),
    };
    let message = format!("the spares of `{name}` can't be counted: {error}");
    Problem::new(Code::BreakageTooWide, message, help, path)
}

/// Spares of one kind of piece.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TileSpares {
    /// The tile, with `, pan` or `, cover` for a two-piece tile.
    pub tile: String,
    /// How many tiles are handled, by class.
    pub handled: Handled,
    /// Whole tiles that the arrays hide and that nothing else is done to: they can be harvested.
    pub hidden: u64,
    /// What one tile weighs, grams, if the job says.
    pub weight_g: Option<f64>,
    /// The count and how it was found.
    #[serde(flatten)]
    pub spares: Spares,
    /// The count at the least expected cost; `None` where the job does not say what a tile short costs, or a tile.
    pub least_cost: Option<LeastCost>,
}
