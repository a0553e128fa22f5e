//! Unit costs of the work of posts, from the job's own prices and minutes.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::deck::{NAILS_A_PIECE, bands_mm2, cement_mm3, mesh_mm};
use crate::model::{Action, Assembly, Breakage, DriedIn, Item, Job, Pieces, Slope};
use crate::quantities::doses;
use crate::roof::{Part, piece_name};

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
        let price = |item: &str, own: Option<f64>| unit_price(job, item, own);
        let minute = |action: Action| labour(job, action);
        let underlayment = &*slope.underlayment;
        let three_course = assembly.deck_flashing.dried_in == DriedIn::ThreeCourse;
        let mut post = items(job, &assembly.items) + minute(Action::Set) + sealant(job, assembly);
        if three_course {
            post += cement_and_mesh(job, assembly) + minute(Action::ThreeCourse);
        }
        let staple = price("staple", None).unwrap_or_default();
        let roll_mm2 = underlayment.roll_length.map(|length| length.mm() * underlayment.sheet_width.mm());
        let [patches, rolls] = ["patches", "rolls"].map(|kind| format!("{}, {kind}", underlayment.name));
        let by_roll = roll_mm2.and_then(|mm2| Some(pack_price(job, &rolls, &patches, 0.0)? / mm2));
        Rates {
            post,
            hole: minute(Action::CutHole),
            notch: minute(Action::CutNotch),
            lift: minute(Action::Lift),
            loosen: minute(Action::Loosen),
            fastener: price(&format!("fastener for {}", slope.tile.name), None).unwrap_or_default(),
            batten: minute(Action::Batten)
                + NAILS_A_PIECE as f64 * price("batten nail", None).unwrap_or_default(),
            patch: minute(Action::Patch),
            felt: by_roll.or_else(|| price(&patches, None)).unwrap_or_default(),
            staples: staple / job.practice.staple_spacing.mm(),
            board: minute(Action::Block) + items(job, &assembly.blocking_items),
            board_mm: price("blocking board", None).unwrap_or_default(),
            tiles: tiles(job, slope),
        }
    }
}

fn items(job: &Job, items: &[Item]) -> f64 {
    let cost = |item: &Item| f64::from(item.count) * unit_price(job, &item.item, None).unwrap_or_default();
    items.iter().map(cost).sum()
}

fn sealant(job: &Job, assembly: &Assembly) -> f64 {
    let practice = &job.practice;
    let mm3: f64 = doses(assembly, practice, job.display).iter().map(|dose| dose.mm3).sum();
    mm3 * in_packs(job, "sealant", "sealant cartridge", practice.cartridge_mm3, practice.sealant_waste)
}

fn cement_and_mesh(job: &Job, assembly: &Assembly) -> f64 {
    let (terms, flange) = (&job.practice.three_course, &assembly.deck_flashing);
    let long = flange.down + flange.up;
    let cement = cement_mm3(bands_mm2(flange.width, long, terms.mesh_width), terms.film, terms.coats);
    let mesh = mesh_mm(flange.width, long, terms.mesh_width);
    cement * in_packs(job, "roof cement", "roof cement, containers", terms.container_mm3, terms.cement_waste)
        + mesh
            * in_packs(job, "reinforcing mesh", "reinforcing mesh, rolls", terms.roll.mm(), terms.mesh_waste)
}

/// Expected spare tiles for a tile that is cut, removed or loosened, and the pieces for a severed one.
fn tiles(job: &Job, slope: &Slope) -> [TileRates; 2] {
    let parts = match slope.tile.pieces {
        Pieces::One { .. } => [Some(Part::Tile), None],
        Pieces::PanAndCover { .. } => [Some(Part::Pan), Some(Part::Cover)],
    };
    let Breakage { cut, removed, loosened, recut, .. } = job.practice.breakage;
    // Without a mean in the crew's record the search counts no breakage; the takeoff refuses such a record.
    let broken_per_cut =
        if recut { cut.mean_broken_before(1).unwrap_or_default() } else { cut.mean_broken(1) };
    parts.map(|part| {
        let Some(part) = part else { return TileRates::default() };
        let item = format!("spare tile {}", piece_name(slope, part));
        let tile = unit_price(job, &item, None).unwrap_or_default();
        let make_up = job.practice.pieces_for_severed as f64 * tile + labour(job, Action::MakeUp);
        TileRates {
            severed: make_up,
            cut: broken_per_cut * tile,
            removed: removed.mean_broken(1) * tile,
            loosened: loosened.mean_broken(1) * tile,
        }
    })
}

/// Unit cost of a quantity: by the price of its packs, or else its own.
fn in_packs(job: &Job, quantity: &str, packs: &str, holds: f64, waste: f64) -> f64 {
    let by_pack = pack_price(job, packs, quantity, waste).map(|pack| pack / holds);
    by_pack.or_else(|| unit_price(job, quantity, Some(waste))).unwrap_or_default()
}

/// Cost of a pack with its own waste, or that of its quantity.
fn pack_price(job: &Job, packs: &str, quantity: &str, waste: f64) -> Option<f64> {
    let own = job.practice.waste.get(quantity).copied().unwrap_or(waste);
    unit_price(job, packs, Some(own))
}

/// Unit cost of an item with its waste; `None` without a price.
fn unit_price(job: &Job, item: &str, waste: Option<f64>) -> Option<f64> {
    let rows = job.prices.as_ref()?.of(item);
    let cheapest = rows.filter_map(|row| row.price.amount().checked_div(row.size)).min()?;
    let waste = job.practice.waste.get(item).copied().or(waste).unwrap_or_default();
    Some(cheapest.to_f64()? * (1.0 + waste))
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
