//! What a unit of each work costs on a slope, by the job's own prices and minutes.
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
/// An item costs the cheapest `price / size` among its rows of the price list, with the share of it that is wasted; one
/// without a price costs nothing. What is sold in packs (sealant, roof cement, mesh, felt) goes by the price of the
/// packs where they have one, else by that of the quantity.
#[derive(Clone, Debug)]
pub(super) struct Rates {
    /// A post wherever it stands: its items, sealant, cement and mesh, and setting it.
    pub(super) post: f64,
    /// A hole, a notch or a corner cut.
    pub(super) hole: f64,
    pub(super) notch: f64,
    /// A tile taken up and laid back; a tile loosened.
    pub(super) lift: f64,
    pub(super) loosen: f64,
    /// A fastener of a tile laid back.
    pub(super) fastener: f64,
    /// A piece of batten cut out and reset.
    pub(super) batten: f64,
    /// A patch, besides its felt and staples.
    pub(super) patch: f64,
    /// Felt, for a square millimetre.
    pub(super) felt: f64,
    /// Staples, for a millimetre round a patch.
    pub(super) staples: f64,
    /// A blocking board, besides its length; and a millimetre of it.
    pub(super) board: f64,
    pub(super) board_mm: f64,
    /// What breaks and is made up, by part: the piece of a one-piece tile or the pan, then the cover.
    pub(super) tiles: [TileRates; 2],
}

/// Expected cost of one tile handled, by its class.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct TileRates {
    pub(super) severed: f64,
    pub(super) cut: f64,
    pub(super) removed: f64,
    pub(super) loosened: f64,
}

impl Rates {
    pub(super) fn of(job: &Job, slope: &Slope, assembly: &Assembly) -> Rates {
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

/// What is cut, taken up or loosened breaks so often on average, and then a spare is used.
fn tiles(job: &Job, slope: &Slope) -> [TileRates; 2] {
    let parts = match slope.tile.pieces {
        Pieces::One { .. } => [Some(Part::Tile), None],
        Pieces::PanAndCover { .. } => [Some(Part::Pan), Some(Part::Cover)],
    };
    let Breakage { cut, removed, loosened, recut, .. } = job.practice.breakage;
    // A record that says too little for a mean asks for no spare on average: the takeoff says so.
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

/// What an action costs.
fn labour(job: &Job, action: Action) -> f64 {
    let cost = || {
        let labour = job.bid.as_ref()?.labour.as_ref()?;
        let minutes = labour.minutes.of(action)?;
        minutes.checked_mul(labour.rate_per_hour.amount())?.checked_div(Decimal::from(60))?.to_f64()
    };
    cost().unwrap_or_default()
}
