//! Unit costs of the work of posts, from the job's own prices and minutes.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::deck::NAILS_A_PIECE;
use crate::materials::{Material, Piece};
use crate::model::{Action, Assembly, Breakage, Job, Pieces, Slope};
use crate::pricing::unit_cost;
use crate::quantities::{Bill, bill_of_batten_piece, bill_of_blocking, bill_of_post};
use crate::roof::Part;

/// The unit costs of the posts of one assembly on one slope, in the job's currency.
///
/// The unit cost of an item is the least `price / size` among its rows of the price list, waste included; an item without
/// a price costs nothing. An item sold in packs (sealant, roof cement, mesh, felt) takes the price of its packs where they
/// have one, else the price of the quantity.
#[derive(Clone, Debug)]
pub(crate) struct Rates {
    /// A post anywhere: its items, sealant, cement and mesh, and the labour of setting it.
    pub(crate) post: f64,
    /// A hole.
    pub(crate) hole: f64,
    /// A notch or a corner cut.
    pub(crate) notch: f64,
    /// Labour of a tile removed and reset.
    pub(crate) lift: f64,
    /// Labour of a tile loosened.
    pub(crate) loosen: f64,
    /// A fastener of a tile that is reset.
    pub(crate) fastener: f64,
    /// A piece of batten cut out and reset.
    pub(crate) batten: f64,
    /// A patch, without its felt and staples.
    pub(crate) patch: f64,
    /// Felt, per square millimetre.
    pub(crate) felt: f64,
    /// Staples, per millimetre of a patch's perimeter.
    pub(crate) staples: f64,
    /// A blocking board, without its wood.
    pub(crate) board: f64,
    /// Wood of a blocking board, per millimetre.
    pub(crate) board_mm: f64,
    /// Expected breakage and make-up, by part: the piece of a one-piece tile or the pan, then the cover.
    pub(crate) tiles: [TileRates; 2],
}

/// Expected cost of one tile handled, by its class.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct TileRates {
    pub(crate) severed: f64,
    pub(crate) cut: f64,
    pub(crate) removed: f64,
    pub(crate) loosened: f64,
}

impl Rates {
    pub(crate) fn new(job: &Job, slope: &Slope, assembly: &Assembly) -> Rates {
        let unit = |material: Material| unit_cost(job, &material).unwrap_or_default();
        let minute = |action: Action| labour(job, action);
        Rates {
            post: cost_of(job, &bill_of_post(job, assembly)),
            hole: minute(Action::CutHole),
            notch: minute(Action::CutNotch),
            lift: minute(Action::Lift),
            loosen: minute(Action::Loosen),
            fastener: unit(Material::TileFastener(slope.tile.name.clone())),
            batten: cost_of(job, &bill_of_batten_piece(NAILS_A_PIECE)),
            patch: minute(Action::Patch),
            felt: unit(Material::Felt(slope.underlayment.name.clone())),
            staples: unit(Material::Staple) / job.practice.staple_spacing.mm(),
            board: cost_of(job, &bill_of_blocking(job, assembly)),
            board_mm: unit(Material::Blocking),
            tiles: tiles(job, slope),
        }
    }
}

/// Cost of a bill: its materials and its actions.
fn cost_of(job: &Job, bill: &Bill) -> f64 {
    let material = |material: &Material| unit_cost(job, material).unwrap_or_default();
    let materials: f64 = bill.needs.iter().map(|need| need.amount * material(&need.material)).sum();
    materials + bill.actions.iter().map(|&action| labour(job, action)).sum::<f64>()
}

/// Expected spare tiles for a tile that is cut, removed or loosened, and the pieces for a severed one.
fn tiles(job: &Job, slope: &Slope) -> [TileRates; 2] {
    let parts = match slope.tile.pieces {
        Pieces::One { .. } => [Some(Part::Tile), None],
        Pieces::PanAndCover { .. } => [Some(Part::Pan), Some(Part::Cover)],
    };
    let Breakage { cut, removed, loosened, recut, .. } = job.practice.breakage;
    // A record too short for a mean contributes no spare here: the takeoff reports it.
    let of_cut = if recut { cut.mean_broken_before(1).unwrap_or_default() } else { cut.mean_broken(1) };
    parts.map(|part| {
        let Some(part) = part else { return TileRates::default() };
        let spare_tile = Material::SpareTile(Piece::new(&slope.tile.name, part));
        let tile = unit_cost(job, &spare_tile).unwrap_or_default();
        let make_up = job.practice.pieces_for_severed as f64 * tile + labour(job, Action::MakeUp);
        TileRates {
            severed: make_up,
            cut: of_cut * tile,
            removed: removed.mean_broken(1) * tile,
            loosened: loosened.mean_broken(1) * tile,
        }
    })
}

/// Labour cost of an action.
fn labour(job: &Job, action: Action) -> f64 {
    let cost = || {
        let labour = job.bid.as_ref()?.labour.as_ref()?;
        let minutes = labour.minutes.of(action)?;
        minutes.checked_mul(labour.rate_per_hour.amount())?.checked_div(Decimal::from(60))?.to_f64()
    };
    cost().unwrap_or_default()
}
